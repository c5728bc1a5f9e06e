#pragma once
#include <atomic>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace gapsound {

/// Results handed from a thread to the window; the last one put is the one taken.
template <class T>
class Mailbox {
 public:
  void put(T value) {
    const std::lock_guard lock(mutex_);
    value_ = std::move(value);
  }
  [[nodiscard]] std::optional<T> take() {
    const std::lock_guard lock(mutex_);
    return std::exchange(value_, std::nullopt);
  }
  void clear() { static_cast<void>(take()); }

 private:
  std::mutex mutex_;
  std::optional<T> value_;
};

/// A thread that does the last thing it was told; what it was doing before is called off.
class Errand {
 public:
  using Stale = std::atomic<bool>;
  /// What to do; looks now and then whether it has become stale, and must not throw.
  using Job = std::function<void(const Stale&)>;

  /// A background errand gives way to everything else on the machine.
  explicit Errand(bool background = false);
  ~Errand();
  Errand(const Errand&) = delete;
  Errand& operator=(const Errand&) = delete;
  void post(Job job);
  /// Calls off what is being done and what waits.
  void cancel();
  [[nodiscard]] bool busy() const;
  /// Until nothing is left to do.
  void wait() const;

 private:
  void run();

  mutable std::mutex mutex_;
  mutable std::condition_variable changed_;
  std::optional<Job> next_;
  bool working_ = false, ends_ = false;
  Stale stale_{false};
  std::thread thread_;
};

}  // namespace gapsound
