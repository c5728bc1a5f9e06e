#include "picture/men.hpp"

#include <algorithm>

namespace gapsound {
namespace {

constexpr double kLetterShare = 1.30;  // letter height over a sign's radius

int levelOf(const Setup& setup, int man) {
  return isOffense(man) ? 0 : std::clamp(setup.men[static_cast<std::size_t>(man)].fit.level, 1, 3);
}

const Pose& poseOf(const Frame& frame, int man) { return frame.men[static_cast<std::size_t>(man)]; }
const Man& manOf(const Setup& setup, int man) { return setup.men[static_cast<std::size_t>(man)]; }

bool greyed(const Setup& setup, int man, const FieldLook& look) {
  return !look.shown[static_cast<std::size_t>(levelOf(setup, man))];
}

Polygon triangleAt(Vec2 at, double r, StyleId style) {  // apex toward the offense
  return {{{at.x, at.y - 1.1 * r}, {at.x + r, at.y + 0.75 * r}, {at.x - r, at.y + 0.75 * r}}, style};
}

Shape signOf(const Setup& setup, int man, Vec2 at, double r, StyleId style) {
  const int level = levelOf(setup, man);
  if (level == 1 || level == 2) return triangleAt(at, r, style);
  if (level == 3) return Rect{at - Vec2{1.2 * r, 0.85 * r}, at + Vec2{1.2 * r, 0.85 * r}, 0.3 * r, style};
  if (manOf(setup, man).group == Group::center)
    return Rect{at - Vec2{r, r} * 0.9, at + Vec2{r, r} * 0.9, 0.0, style};
  return Disc{at, r, style};
}

StyleId signStyle(const Setup& setup, int man, const Frame& frame, const FieldLook& look) {
  if (greyed(setup, man, look)) return StyleId::muted;
  constexpr std::array styles{StyleId::offense, StyleId::defense_1, StyleId::defense_2, StyleId::defense_3};
  return frame.carrier == man ? StyleId::carrier : styles[static_cast<std::size_t>(levelOf(setup, man))];
}

StyleId letterStyle(const Setup& setup, int man, const FieldLook& look) {
  if (greyed(setup, man, look)) return StyleId::muted_letter;
  constexpr std::array styles{StyleId::offense_letter, StyleId::defense_letter, StyleId::defense_letter,
                              StyleId::defense_3_letter};
  return styles[static_cast<std::size_t>(levelOf(setup, man))];
}

bool lettersInside(const Setup& setup, int man) {
  const int level = levelOf(setup, man);
  return level == 0 || level == 3;
}

/// The first of the two has the attacker's index.
std::vector<std::pair<int, int>> pairsInContact(const Frame& frame) {
  std::vector<std::pair<int, int>> pairs;
  for (int man = 0; man < kMen; ++man) {
    const int other = poseOf(frame, man).engaged;
    if (other == kNobody) continue;
    const std::pair<int, int> pair = std::minmax(man, other);
    if (std::find(pairs.begin(), pairs.end(), pair) == pairs.end()) pairs.push_back(pair);
  }
  return pairs;
}

void drawBar(Panel& panel, Vec2 at, const Pose& pose, double half) {
  const Vec2 along = leftOf(pose.face);
  panel.shapes.push_back(Line{at - half * along, at + half * along, StyleId::contact});
}

bool inContact(const std::vector<std::pair<int, int>>& pairs, int man) {
  return std::any_of(pairs.begin(), pairs.end(),
                     [&](const auto& pair) { return pair.first == man || pair.second == man; });
}

/// How far his sign reaches toward where he faces.
double reachOf(const Setup& setup, int man, Vec2 face, double r) {
  const bool boxed = levelOf(setup, man) == 3;
  return boxed ? (1.2 * std::abs(face.x) + 0.85 * std::abs(face.y)) * r : r;
}

void drawShoulder(Panel& panel, const Setup& setup, const Frame& frame, int man, double r) {
  const Pose& pose = poseOf(frame, man);
  const Vec2 middle = pose.pos + (reachOf(setup, man, pose.face, r) + 0.08 * r) * pose.face;
  const Vec2 half = 0.8 * r * leftOf(pose.face);
  panel.shapes.push_back(Line{middle - half, middle + half, StyleId::shoulder});
}

void drawBall(Panel& panel, const Frame& frame, double r) {
  const Vec2 aside = frame.carrier == kNobody ? Vec2{} : Vec2{0.85 * r, -0.85 * r};
  panel.shapes.push_back(Disc{frame.ball + aside, 0.42 * r, StyleId::ball});
}

void drawMan(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look, int man) {
  const double r = look.symbol;
  const Vec2 at = poseOf(frame, man).pos;
  if (man == look.selected) panel.shapes.push_back(Disc{at, 1.7 * r, StyleId::selected});
  panel.shapes.push_back(signOf(setup, man, at, r, signStyle(setup, man, frame, look)));
  if (!look.names || !lettersInside(setup, man)) return;
  const double size = kLetterShare * r * panel.camera.scale_x;
  panel.shapes.push_back(Label{at, manOf(setup, man).id, size, letterStyle(setup, man, look)});
}

bool inSight(const Panel& panel, Vec2 at) {
  const Vec2 page = panel.camera.toPage(at);
  const PageRect& clip = panel.clip;
  return clip.x <= page.x && page.x <= clip.right() && clip.y <= page.y && page.y <= clip.bottom();
}

std::vector<Vec2> placesAround(Vec2 at, double dx, double dy) {
  return {{at.x, at.y - dy},      {at.x + dx, at.y},      {at.x - dx, at.y},      {at.x, at.y + dy},
          {at.x + dx, at.y - dy}, {at.x - dx, at.y - dy}, {at.x, at.y - 1.7 * dy}};
}

void drawName(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look, int man,
              FreeSpace& space) {
  const std::string& id = manOf(setup, man).id;
  const double size = std::max(look.text, 0.95 * look.symbol * panel.camera.scale_x);
  const double r = look.symbol * panel.camera.scale_x;
  const double width = roughWidth(id, size) + 2.0;
  const double height = 0.8 * size;
  const Vec2 at = panel.camera.toPage(poseOf(frame, man).pos);
  const auto places = placesAround(at, r + 0.55 * width, r + 0.62 * height);
  const Vec2 middle = space.place(places, width, height);
  panel.shapes.push_back(Label{panel.camera.fromPage(middle), id, size, letterStyle(setup, man, look)});
}

}  // namespace

void drawTrails(Panel& panel, const std::vector<Frame>& past, const Frame& frame) {
  if (past.empty()) return;
  for (int man = 0; man < kMen; ++man) {
    Polyline trail{{}, isOffense(man) ? StyleId::trail_offense : StyleId::trail_defense};
    for (const Frame& before : past) trail.points.push_back(poseOf(before, man).pos);
    trail.points.push_back(poseOf(frame, man).pos);
    panel.shapes.push_back(std::move(trail));
  }
  Polyline ball{{}, StyleId::trail_ball};
  for (const Frame& before : past) ball.points.push_back(before.ball);
  ball.points.push_back(frame.ball);
  panel.shapes.push_back(std::move(ball));
}

void drawContacts(Panel& panel, const Frame& frame, const FieldLook& look) {
  const double half = 0.95 * look.symbol;
  const double apart = 0.055;  // yd from the meeting point to each bar
  for (const auto& [a, b] : pairsInContact(frame)) {
    const Pose& first = poseOf(frame, a);
    const Pose& second = poseOf(frame, b);
    const Vec2 meeting = 0.5 * (first.pos + second.pos);
    const Vec2 toward = unit(second.pos - first.pos);
    drawBar(panel, meeting - apart * toward, first, half);
    drawBar(panel, meeting + apart * toward, second, half);
  }
}

void drawMen(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look) {
  const auto pairs = pairsInContact(frame);
  for (int man = kMen - 1; man >= 0; --man) {
    if (man == frame.carrier) continue;
    if (!inContact(pairs, man)) drawShoulder(panel, setup, frame, man, look.symbol);
    drawMan(panel, setup, frame, look, man);
  }
  if (frame.carrier != kNobody) {
    drawShoulder(panel, setup, frame, frame.carrier, look.symbol);
    drawMan(panel, setup, frame, look, frame.carrier);
  }
  drawBall(panel, frame, look.symbol);
}

void drawOffense(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look) {
  for (int man = kOffense - 1; man >= 0; --man) drawMan(panel, setup, frame, look, man);
}

void drawNames(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look,
               FreeSpace& space) {
  const double side = 2.1 * look.symbol * panel.camera.scale_x;
  for (int man = 0; man < kMen; ++man) space.take(panel.camera.toPage(poseOf(frame, man).pos), side, side);
  if (!look.names) return;
  for (int man = kOffense; man < kMen; ++man) {
    if (lettersInside(setup, man) || !inSight(panel, poseOf(frame, man).pos)) continue;
    drawName(panel, setup, frame, look, man, space);
  }
}

void drawShadows(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look) {
  for (int man = 0; man < kMen; ++man) {
    panel.shapes.push_back(signOf(setup, man, poseOf(frame, man).pos, look.symbol, StyleId::shadow));
  }
}

}  // namespace gapsound
