#pragma once

namespace gapsound {

/// What a man's body can do. Yards, seconds, kilograms; pads and level scale already in.
struct Body {
  double mass_kg = 100.0;   // [45, 190]
  double top_speed = 10.0;  // V, yd/s, (0, 13]
  double tau = 1.15;        // T of the sprint law, s, [0.9, 1.5]
  double brake = 7.7;       // most deceleration, yd/s^2
  double lateral = 7.7;     // most sideways acceleration, yd/s^2
  double backpedal = 0.6;   // top speed backwards as a share of top_speed
  double shoulder = 0.33;   // half breadth with pads, yd
  double chest = 0.20;      // half depth of a leaning man with pads, yd
  double push = 1.0;        // sustained push as a multiple of the group's usual force
  double tackling = 0.0;    // log-odds added to every tackle he tries
};

}  // namespace gapsound
