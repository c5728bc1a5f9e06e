#pragma once
#include <map>
#include <string>

#include "scenario/film.hpp"

namespace gapsound {

/// How a tracking file lies on the field and measures angles.
struct FilmAxes {
  double line = 0.0;         // line of scrimmage, along the field from the left end line, yd, (10, 110)
  bool attack_right = true;  // the offense attacks toward +x
  bool clockwise = true;     // angles grow clockwise
  bool zero_up = true;       // 0 degrees is +y; else +x
  std::map<std::string, std::string> columns;  // our name -> the file's
};

/// "speed=s,direction=dir" as a map. Throws InputError for what is no pair and for columns we do not know.
[[nodiscard]] std::map<std::string, std::string> columnNames(const std::string& text);

/// The 22 men of a CSV with one row a man: id, side, position, x, y, speed, direction, ball; facing if there
/// is one. x runs along the field 0..120, y across 0..53.33. The ball is marked in its column or by a row of
/// its own, which gives it to the nearest man. `side` is offense and defense, or any two words: the ball's
/// attacks. Throws InputError with line and column for a wrong number of men, a man twice, no number, a place
/// off the field.
[[nodiscard]] Film readFilm(const std::string& file, const FilmAxes& axes);

}  // namespace gapsound
