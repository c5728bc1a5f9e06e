#pragma once
#include "athlete/body.hpp"
#include "base/model.hpp"
#include "minds/glimpse.hpp"
#include "minds/intent.hpp"

namespace gapsound {

/// Velocity toward a goal that eases off close to it: `speed` far away, less within a yard.
[[nodiscard]] Vec2 toward(Vec2 from, Vec2 goal, double speed);

/// Where the ball is going to cross the line if the back keeps on as he goes now, x in yards.
[[nodiscard]] double projectedCrossing(const Glimpse& glimpse);
/// How deep behind the line the ball (or the man who is about to get it) is, yd, >= 0.
[[nodiscard]] double ballDepth(const Glimpse& glimpse);
/// Where the watched back is now.
[[nodiscard]] Vec2 backPlace(const Glimpse& glimpse);

/// True once the ball has declared: about to cross the line, close by, or stopped near the line.
[[nodiscard]] bool ballDeclares(const Glimpse& glimpse, const Model& model, double lead_s);

/// Goes for the ball at the first place he can meet it, keeping `leverage` yards to its right (+) or left (-)
/// while far, and comes to balance before contact.
[[nodiscard]] Intent pursue(const Glimpse& glimpse, const Model& model, const Body& body, double leverage,
                            double top_speed);

}  // namespace gapsound
