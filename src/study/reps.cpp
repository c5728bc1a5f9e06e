#include "study/reps.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>

#include "sim/play.hpp"

namespace gapsound {
namespace {

/// Hands out the items 0..total-1 once each. Whatever was handed out is finished, so an early stop
/// leaves a prefix without holes.
class Work {
 public:
  Work(std::size_t total, const Progress& progress) : total_(total), progress_(progress) {}

  template <typename Item>
  void run(int threads, const Item& item) {
    std::vector<std::thread> team;
    for (int k = 1; k < threads; ++k) team.emplace_back([&] { drain(item); });
    drain(item);
    for (auto& thread : team) thread.join();
    if (fault_) std::rethrow_exception(fault_);
  }
  [[nodiscard]] bool stopped() const { return stop_; }
  [[nodiscard]] std::size_t handedOut() const { return std::min(next_.load(), total_); }

 private:
  template <typename Item>
  void drain(const Item& item) {
    try {
      while (!stop_) {
        const std::size_t k = next_.fetch_add(1);
        if (k >= total_) return;
        item(k);
        tell();
      }
    } catch (...) {
      const std::lock_guard lock(mutex_);
      if (!fault_) fault_ = std::current_exception();
      stop_ = true;
    }
  }

  void tell() {
    if (!progress_) return;
    const std::lock_guard lock(mutex_);
    ++done_;
    if (!progress_(static_cast<double>(done_) / static_cast<double>(total_))) stop_ = true;
  }

  std::size_t total_;
  const Progress& progress_;
  std::atomic<std::size_t> next_{0};
  std::atomic<bool> stop_{false};
  std::mutex mutex_;
  std::size_t done_ = 0;
  std::exception_ptr fault_;
};

constexpr std::size_t kBatchOfOne = 32;  // reps a thread plays between two hand-overs

int teamSize(int threads) {
  return threads > 0 ? threads : static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
}

}  // namespace

std::vector<std::vector<Summary>> playAll(const std::vector<Setup>& setups, const Model& model,
                                          std::uint64_t first_seed, int n, int threads,
                                          const Progress& progress) {
  const auto reps = static_cast<std::size_t>(std::max(n, 0));
  std::vector<std::vector<Summary>> results(setups.size(), std::vector<Summary>(reps));
  if (setups.empty() || reps == 0) return results;
  Work work(setups.size() * reps, progress);
  // Seed by seed through all setups: a study that is stopped early still has its pairs.
  work.run(teamSize(threads), [&](std::size_t k) {
    const std::size_t setup = k % setups.size();
    const std::size_t rep = k / setups.size();
    results[setup][rep] = summarize(playTape(setups[setup], model, first_seed + rep));
  });
  for (auto& row : results) row.resize(work.handedOut() / setups.size());
  return results;
}

std::size_t playInOrder(const Looks& looks, const Schedule& schedule, std::size_t from, int threads,
                        const Receive& receive, const Progress& progress) {
  const std::size_t most = kBatchOfOne * static_cast<std::size_t>(teamSize(threads));
  std::vector<Summary> batch(most);
  const auto total = static_cast<double>(schedule.size());
  for (std::size_t at = from; at < schedule.size();) {
    const std::size_t count = std::min(most, schedule.size() - at);
    const Progress overall = [&](double share) {
      return !progress || progress((static_cast<double>(at) + share * static_cast<double>(count)) / total);
    };
    Work work(count, overall);
    work.run(teamSize(threads), [&](std::size_t k) {
      const RepPlace place = schedule.at(at + k);
      batch[k] = summarize(playTape(looks.setups[place.cell], looks.model, looks.first_seed + place.rep));
    });
    const std::size_t done = work.handedOut();
    for (std::size_t k = 0; k < done; ++k)
      if (!receive(at + k, batch[k])) return at + k + 1;
    at += done;
    if (work.stopped()) return at;
  }
  return schedule.size();
}

std::vector<Summary> playMany(const Setup& setup, const Model& model, std::uint64_t first_seed, int n,
                              int threads, const Progress& progress) {
  return playAll({setup}, model, first_seed, n, threads, progress).front();
}

void playOn(std::vector<Summary>& reps, const Setup& setup, const Model& model, std::uint64_t first_seed,
            int n, int threads, const Progress& progress) {
  const std::size_t has = reps.size();
  if (has >= static_cast<std::size_t>(n)) return;
  const auto more = playMany(setup, model, first_seed + has, n - static_cast<int>(has), threads, progress);
  reps.insert(reps.end(), more.begin(), more.end());
}

void visitAll(const std::vector<Setup>& setups, const Model& model, std::uint64_t first_seed, int n,
              int threads, const std::function<void(std::size_t, std::size_t, const Tape&)>& visit,
              const Progress& progress) {
  const auto reps = static_cast<std::size_t>(std::max(n, 0));
  if (setups.empty() || reps == 0) return;
  Work work(setups.size() * reps, progress);
  work.run(teamSize(threads), [&](std::size_t k) {
    const std::size_t setup = k % setups.size(), rep = k / setups.size();
    visit(setup, rep, playTape(setups[setup], model, first_seed + rep));
  });
}

void visitSeeds(const Setup& setup, const Model& model, const std::vector<std::uint64_t>& seeds, int threads,
                const std::function<void(std::size_t, const Tape&)>& visit) {
  const Progress none;
  Work work(seeds.size(), none);
  work.run(teamSize(threads), [&](std::size_t k) { visit(k, playTape(setup, model, seeds[k])); });
}

Tape playTape(const Setup& setup, const Model& model, std::uint64_t seed) {
  return {setup, seed, play(setup, model, seed)};
}

}  // namespace gapsound
