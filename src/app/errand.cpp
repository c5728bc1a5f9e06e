#include "app/errand.hpp"

#include <sys/resource.h>
#include <unistd.h>

namespace gapsound {

Errand::Errand(bool background)
    : thread_([this, background] {
        constexpr int kGivesWay = 10;
        if (background) static_cast<void>(setpriority(PRIO_PROCESS, static_cast<id_t>(gettid()), kGivesWay));
        run();
      }) {}

Errand::~Errand() {
  {
    const std::lock_guard lock(mutex_);
    ends_ = true;
    next_.reset();
    stale_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Errand::post(Job job) {
  {
    const std::lock_guard lock(mutex_);
    next_ = std::move(job);
    stale_ = true;
  }
  changed_.notify_all();
}

void Errand::cancel() {
  const std::lock_guard lock(mutex_);
  next_.reset();
  stale_ = true;
}

bool Errand::busy() const {
  const std::lock_guard lock(mutex_);
  return working_ || next_.has_value();
}

void Errand::wait() const {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !working_ && !next_; });
}

void Errand::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return ends_ || next_; });
    if (ends_) return;
    const Job job = std::move(*next_);
    next_.reset();
    stale_ = false;
    working_ = true;
    lock.unlock();
    job(stale_);
    lock.lock();
    working_ = false;
    changed_.notify_all();
  }
}

}  // namespace gapsound
