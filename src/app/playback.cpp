#include "app/playback.hpp"

#include <algorithm>
#include <cmath>

#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr std::int64_t kUnitsPerTick = 1000;
constexpr double kUnitsPerSecond = static_cast<double>(kUnitsPerTick) * kTicksPerSecond;
constexpr double kPauseAtEnd = 1.2;  // s before a loop starts over

std::int64_t unitsOf(double t) { return std::llround(t * kUnitsPerSecond); }

}  // namespace

void Playback::load(double length) {
  length_ = std::max<std::int64_t>(0, unitsOf(length));
  moveTo(at_);
}

void Playback::play() {
  if (atEnd()) at_ = 0;
  playing_ = true;
  waited_ = 0.0;
}

void Playback::moveTo(std::int64_t at) {
  at_ = std::clamp<std::int64_t>(at, 0, length_);
  rest_ = waited_ = 0.0;
}

void Playback::advance(double dt) {
  if (!playing_) return;
  if (atEnd()) {
    waited_ += dt;
    if (!loop_) playing_ = false;
    if (loop_ && waited_ >= kPauseAtEnd) moveTo(0);
    return;
  }
  rest_ += dt * speed() * kUnitsPerSecond;
  const auto whole = static_cast<std::int64_t>(rest_);
  rest_ -= static_cast<double>(whole);
  const std::int64_t before = at_;
  at_ = std::min(length_, at_ + whole);
  if (!stop_) return;
  const std::int64_t stop = unitsOf(*stop_);
  if (before < stop && at_ >= stop) {
    moveTo(stop);
    playing_ = false;
  }
}

void Playback::stepFrames(int count) {
  pause();
  moveTo((at_ / kUnitsPerTick + count) * kUnitsPerTick);
}

void Playback::stepTenths(int count) {
  pause();
  moveTo(at_ + unitsOf(0.1) * count);
}

void Playback::home() {
  pause();
  moveTo(0);
}

void Playback::end() {
  pause();
  moveTo(length_);
}

void Playback::seek(double t) { moveTo(unitsOf(t)); }

void Playback::faster() { speed_ = std::min(speed_ + 1, kSpeeds.size() - 1); }
void Playback::slower() { speed_ = speed_ == 0 ? 0 : speed_ - 1; }

double Playback::time() const { return static_cast<double>(at_) / kUnitsPerSecond; }
double Playback::length() const { return static_cast<double>(length_) / kUnitsPerSecond; }

}  // namespace gapsound
