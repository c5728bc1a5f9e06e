#pragma once
#include <array>
#include <cstdint>
#include <optional>

namespace gapsound {

/// Where the tape stands and whether it runs. Time is counted in thousandths of a tick, so that a moment that
/// was played to and one that was sought are the same number.
class Playback {
 public:
  static constexpr std::array<double, 5> kSpeeds{0.1, 0.25, 0.5, 1.0, 2.0};

  /// A tape of this length, s; the moment stays as near as it can.
  void load(double length);
  void play();
  void pause() { playing_ = false; }
  void toggle() { playing_ ? pause() : play(); }
  /// Real time passes; at the end the tape holds, or after a pause starts over when it loops.
  void advance(double dt);
  /// Whole ticks, from the tick at or before the present moment; pauses.
  void stepFrames(int count);
  /// Tenths of a second; pauses.
  void stepTenths(int count);
  /// Both pause.
  void home();
  void end();
  /// To `t` s, held to the tape; whether it runs stays as it is.
  void seek(double t);
  void faster();
  void slower();
  void setLoop(bool on) { loop_ = on; }
  /// Runs no further than this moment until it is moved or taken away, s.
  void stopAt(std::optional<double> t) { stop_ = t; }

  [[nodiscard]] bool playing() const { return playing_; }
  [[nodiscard]] bool loops() const { return loop_; }
  [[nodiscard]] bool atEnd() const { return at_ >= length_; }
  [[nodiscard]] double speed() const { return kSpeeds[speed_]; }
  [[nodiscard]] double time() const;  // s
  [[nodiscard]] double length() const;

 private:
  void moveTo(std::int64_t at);

  std::int64_t at_ = 0, length_ = 0;
  double rest_ = 0.0;    // part of a unit not yet advanced
  double waited_ = 0.0;  // s at the end
  std::size_t speed_ = 3;
  bool playing_ = false, loop_ = true;
  std::optional<double> stop_;
};

}  // namespace gapsound
