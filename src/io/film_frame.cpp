#include "io/film_frame.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <set>
#include <sstream>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"

namespace gapsound {
namespace {

constexpr double kLength = 120.0, kWidth = 53.34, kFieldWidth = 53.333;
constexpr double kFastest = 13.0;  // yd/s
constexpr double kInHand = 2.0;    // farthest the ball is from who has it, yd
const std::vector<std::string> kOurs = {"id",    "side",      "position", "x",     "y",
                                        "speed", "direction", "ball",     "facing"};

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

bool isOffenseWord(const std::string& side) {
  return side == "offense" || side == "offence" || side == "o" || side == "off";
}
bool isDefenseWord(const std::string& side) {
  return side == "defense" || side == "defence" || side == "d" || side == "def";
}
bool isBallWord(const std::string& word) { return word == "ball" || word == "football"; }

/// The file's table under our column names, with the transform to the frame of the run.
class Reader {
 public:
  Reader(const std::string& file, const FilmAxes& axes) : axes_(axes), table_(file, readWhole(file)) {
    for (const char* needed : {"id", "side", "position", "x", "y"}) {
      if (!table_.has(ours(needed)))
        throw InputError(file, "line 1", "no column " + ours(needed),
                         fmt::format("{}", fmt::join(table_.columns(), ", ")));
    }
  }

  Film read() {
    for (std::size_t row = 0; row < table_.rows(); ++row) readRow(row);
    markByBallRow();
    chooseSides();
    requireCounts();
    film_.left_sideline = axes_.attack_right ? -kFieldWidth : 0.0;
    requireTheRightWay();
    return film_;
  }

 private:
  std::string ours(const std::string& name) const {
    const auto found = axes_.columns.find(name);
    return found == axes_.columns.end() ? name : found->second;
  }
  [[noreturn]] void refuse(std::size_t row, const char* column, const std::string& allowed) const {
    table_.refuse(row, ours(column), allowed);
  }
  double required(std::size_t row, const char* column, double low, double high) const {
    const auto value = table_.number(row, ours(column), low, high);
    if (!value) refuse(row, column, fmt::format("a number {:g} to {:g}", low, high));
    return *value;
  }
  std::string word(std::size_t row, const char* column) const {
    return lower(table_.text(row, ours(column)));
  }

  // Field yards to the frame of the run; the lateral origin is the file's own for now.
  Vec2 turned(Vec2 field) const {
    return axes_.attack_right ? Vec2{-field.y, field.x} : Vec2{field.y, -field.x};
  }
  Vec2 place(std::size_t row) const {
    const Vec2 field{required(row, "x", 0.0, kLength), required(row, "y", 0.0, kWidth)};
    return turned(field - Vec2{axes_.line, 0.0});
  }
  // Unit vector in field yards of an angle as the file measures it.
  Vec2 fieldDirection(double degrees) const {
    const double rad = degrees * 3.14159265358979323846 / 180.0;
    const double along = std::cos(rad), turn = axes_.clockwise ? -std::sin(rad) : std::sin(rad);
    return axes_.zero_up ? Vec2{-turn, along} : Vec2{along, turn};
  }
  Vec2 velocity(std::size_t row) const {
    const double speed = table_.number(row, ours("speed"), 0.0, kFastest).value_or(0.0);
    const auto angle = table_.number(row, ours("direction"), -360.0, 360.0);
    if (!angle && speed > 0.2) refuse(row, "direction", "an angle in degrees for a man who moves");
    return angle ? speed * turned(fieldDirection(*angle)) : Vec2{};
  }
  std::optional<double> facing(std::size_t row) const {
    const auto angle = table_.number(row, ours("facing"), -360.0, 360.0);
    if (!angle) return std::nullopt;
    const Vec2 d = turned(fieldDirection(*angle));
    return std::round(std::atan2(d.x, d.y) * 180.0 / 3.14159265358979323846 * 100.0) / 100.0;
  }
  bool marked(std::size_t row) const {
    const std::string cell = word(row, "ball");
    if (cell.empty() || cell == "0" || cell == "no" || cell == "false") return false;
    if (cell == "1" || cell == "yes" || cell == "true" || cell == "x") return true;
    refuse(row, "ball", "1 for the man who has it, else 0 or nothing");
  }

  void readRow(std::size_t row);
  void markByBallRow();
  void chooseSides();
  void requireCounts() const;
  void requireTheRightWay() const;

  const FilmAxes& axes_;
  CsvTable table_;
  Film film_;
  std::vector<std::string> sides_;
  std::vector<std::size_t> rows_;
  std::set<std::string> seen_;
  std::optional<std::size_t> ball_row_;
  Vec2 ball_;
};

void Reader::readRow(std::size_t row) {
  if (isBallWord(word(row, "id")) || isBallWord(word(row, "side")) || isBallWord(word(row, "position"))) {
    if (ball_row_) refuse(row, "id", "one row for the ball");
    ball_row_ = row;
    ball_ = place(row);
    return;
  }
  if (word(row, "id").empty() || !seen_.insert(word(row, "id")).second) refuse(row, "id", "every man once");
  if (word(row, "side").empty()) refuse(row, "side", "offense or defense");
  if (!isPosition(table_.text(row, ours("position"))))
    refuse(row, "position", "a position: LT, WR, HB, FB, NT, OLB, CB, FS ...");
  FilmMan man;
  man.label = table_.text(row, ours("position"));
  man.pos = place(row);
  man.vel = velocity(row);
  man.facing_deg = facing(row);
  man.has_ball = table_.has(ours("ball")) && marked(row);
  film_.men.push_back(man);
  sides_.push_back(word(row, "side"));
  rows_.push_back(row);
}

void Reader::markByBallRow() {
  const auto count =
      std::count_if(film_.men.begin(), film_.men.end(), [](const FilmMan& m) { return m.has_ball; });
  if (count == 1 || film_.men.empty()) return;
  if (count > 1 || !ball_row_)
    refuse(rows_.back(), "ball",
           fmt::format("one man marked with the ball, or a row for it; {} are marked", count));
  auto& men = film_.men;
  const auto nearest = std::min_element(men.begin(), men.end(), [&](const FilmMan& a, const FilmMan& b) {
    return distance(a.pos, ball_) < distance(b.pos, ball_);
  });
  if (distance(nearest->pos, ball_) > kInHand)
    refuse(*ball_row_, "x", fmt::format("within {} yd of the man who has it", kInHand));
  nearest->has_ball = true;
}

/// Two words for the sides; where they do not say which attacks, the ball does.
void Reader::chooseSides() {
  std::string attack;
  for (std::size_t i = 0; i < film_.men.size(); ++i)
    if (film_.men[i].has_ball) attack = sides_[i];
  for (std::size_t i = 0; i < film_.men.size(); ++i) {
    const bool says = isOffenseWord(attack) || isDefenseWord(attack);
    if (isDefenseWord(attack) && film_.men[i].has_ball) refuse(rows_[i], "ball", "a man of the offense");
    if (says && !isOffenseWord(sides_[i]) && !isDefenseWord(sides_[i]))
      refuse(rows_[i], "side", "offense or defense");
    film_.men[i].attacks = says ? isOffenseWord(sides_[i]) : sides_[i] == attack;
  }
}

void Reader::requireCounts() const {
  const auto attackers =
      std::count_if(film_.men.begin(), film_.men.end(), [](const FilmMan& m) { return m.attacks; });
  const auto defenders = std::ssize(film_.men) - attackers;
  if (attackers == 11 && defenders == 11) return;
  const std::size_t last = rows_.empty() ? 0 : rows_.back();
  if (table_.rows() == 0) throw InputError(film_.look.source, "line 2", "nothing", "22 men");
  refuse(last, "side",
         fmt::format("11 men a side up to this line, the last; there are {} on offense, {} on defense",
                     attackers, defenders));
}

/// The offense is on its own side of the defense, or the file lies the other way.
void Reader::requireTheRightWay() const {
  double attack = 0.0, defend = 0.0;
  for (const FilmMan& man : film_.men) (man.attacks ? attack : defend) += man.pos.y / 11.0;
  if (attack < defend) return;
  throw InputError("options", "--attack", axes_.attack_right ? "+x" : "-x",
                   "the way the offense goes; with this one it stands beyond the defense");
}

}  // namespace

std::map<std::string, std::string> columnNames(const std::string& text) {
  std::map<std::string, std::string> names;
  std::stringstream pairs(text);
  for (std::string pair; std::getline(pairs, pair, ',');) {
    const auto at = pair.find('=');
    if (at == std::string::npos || at == 0 || at + 1 == pair.size())
      throw InputError("options", "--columns", pair, "OURS=THEIRS, with commas between");
    const std::string ours = pair.substr(0, at);
    if (std::find(kOurs.begin(), kOurs.end(), ours) == kOurs.end())
      throw InputError("options", "--columns", ours, nameHint(ours, kOurs));
    names[ours] = pair.substr(at + 1);
  }
  return names;
}

Film readFilm(const std::string& file, const FilmAxes& axes) { return Reader(file, axes).read(); }

}  // namespace gapsound
