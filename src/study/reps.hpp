#pragma once
#include <cstdint>
#include <functional>
#include <vector>

#include "analysis/account.hpp"
#include "base/model.hpp"
#include "study/schedule.hpp"

namespace gapsound {

/// Called from one thread at a time with the share of reps done, [0, 1]; return false to stop early.
using Progress = std::function<bool(double)>;

/// Plays seeds first..first+n-1 of each setup on `threads` threads (0: all cores). result[setup][rep] is in
/// seed order and does not depend on the number of threads.
[[nodiscard]] std::vector<std::vector<Summary>> playAll(const std::vector<Setup>& setups, const Model& model,
                                                        std::uint64_t first_seed, int n, int threads = 0,
                                                        const Progress& progress = {});
[[nodiscard]] std::vector<Summary> playMany(const Setup& setup, const Model& model, std::uint64_t first_seed,
                                            int n, int threads = 0, const Progress& progress = {});
/// Adds what is missing until there are n, reps[k] of seed first_seed + k.
void playOn(std::vector<Summary>& reps, const Setup& setup, const Model& model, std::uint64_t first_seed,
            int n, int threads = 0, const Progress& progress = {});
/// Shows every tape of those reps to `visit`, on several threads at once and in no order: it may write only
/// what belongs to its (setup, rep).
void visitAll(const std::vector<Setup>& setups, const Model& model, std::uint64_t first_seed, int n,
              int threads,
              const std::function<void(std::size_t setup, std::size_t rep, const Tape& tape)>& visit,
              const Progress& progress = {});
/// The same for chosen seeds of one setup.
void visitSeeds(const Setup& setup, const Model& model, const std::vector<std::uint64_t>& seeds, int threads,
                const std::function<void(std::size_t rep, const Tape& tape)>& visit);

/// A study's setups, one a cell, and its first seed. Borrows both.
struct Looks {
  const std::vector<Setup>& setups;
  const Model& model;
  std::uint64_t first_seed = 1;
};
/// Gets item k of the schedule and its rep, on the calling thread and in order; returns false to end the
/// study there.
using Receive = std::function<bool(std::size_t k, const Summary& rep)>;
/// Plays items from..size()-1 of the schedule. Memory does not grow with their number. Gives the number of
/// the first item that was not received.
std::size_t playInOrder(const Looks& looks, const Schedule& schedule, std::size_t from, int threads,
                        const Receive& receive, const Progress& progress = {});

/// One rep with its whole tape.
[[nodiscard]] Tape playTape(const Setup& setup, const Model& model, std::uint64_t seed);

}  // namespace gapsound
