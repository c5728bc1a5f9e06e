#include "sim/physics_world.hpp"

#include <box2d/box2d.h>

#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "base/tick.hpp"

// Box2D reads the clock some sixty times a step for a profile nobody asks it for, a quarter of a rep's time.
// These stand before the library's own; a rep has no clock.
b2Timer::b2Timer() { Reset(); }
void b2Timer::Reset() { m_start_sec = m_start_usec = 0; }
float b2Timer::GetMilliseconds() const { return 0.0f; }

namespace gapsound {
namespace {

constexpr int kVelocityIterations = 4;
constexpr int kPositionIterations = 2;
// Every turn makes the world search for whom the man may touch: it waits until it is worth one.
constexpr double kLeastTurn = 0.03;  // rad
// A hard hit first shows a tick late, one man up to 0.15 yd in the other. Who is deeper than this at the end
// of a tick is set back; the solver sees to the rest.
constexpr float kDeepest = 0.08f;  // yd
constexpr int kSetBacks = 4;       // setting one man back may push him into the next
constexpr std::uint16_t kAttackers = 1, kDefenders = 2, kPasser = 4;

b2Vec2 toBox(Vec2 v) { return {static_cast<float>(v.x), static_cast<float>(v.y)}; }
Vec2 fromBox(b2Vec2 v) { return {static_cast<double>(v.x), static_cast<double>(v.y)}; }

b2PolygonShape torsoShape(const PhysicsWorld::Torso& t) {
  b2Vec2 corners[8];
  for (int k = 0; k < 8; ++k) {
    const Vec2 d = fixedDirection(0.39269908169872414 + k * 0.78539816339744828);
    corners[k] = toBox({t.shoulder * d.x, t.chest * d.y});
  }
  b2PolygonShape shape;
  shape.Set(corners, 8);
  return shape;
}

b2Filter filterOf(const PhysicsWorld::Torso& t) {
  b2Filter f;
  f.categoryBits = t.passes_mates ? kPasser : t.attacks ? kAttackers : kDefenders;
  f.maskBits = t.passes_mates ? kDefenders
               : t.attacks    ? static_cast<std::uint16_t>(kAttackers | kDefenders)
                              : static_cast<std::uint16_t>(kAttackers | kDefenders | kPasser);
  return f;
}

struct Overlap {
  b2Vec2 out{0.0f, 0.0f};  // from the first man to the second
  float depth = 0.0f;      // yd
};

Overlap overlapOf(b2Contact& contact) {
  b2Fixture &a = *contact.GetFixtureA(), &b = *contact.GetFixtureB();
  const b2Transform &at = a.GetBody()->GetTransform(), &bt = b.GetBody()->GetTransform();
  b2Manifold manifold;
  contact.Evaluate(&manifold, at, bt);
  if (manifold.pointCount == 0) return {};
  b2WorldManifold found;
  found.Initialize(&manifold, at, 0.0f, bt, 0.0f);  // of the torsos themselves, without the library's skin
  Overlap overlap{found.normal, 0.0f};
  for (int k = 0; k < manifold.pointCount; ++k)
    overlap.depth = std::max(overlap.depth, -found.separations[k]);
  return overlap;
}

void shift(b2Body& body, b2Vec2 by) { body.SetTransform(body.GetPosition() + by, body.GetAngle()); }

using Breadths = std::array<float, kMen>;  // half a man's greater breadth, yd; his body carries his number

/// Two ellipses are no deeper in each other than the circles around them.
bool canBeDeep(b2Contact& contact, const Breadths& breadths) {
  b2Body &a = *contact.GetFixtureA()->GetBody(), &b = *contact.GetFixtureB()->GetBody();
  const float near = breadths[a.GetUserData().pointer] + breadths[b.GetUserData().pointer] - kDeepest;
  return b2DistanceSquared(a.GetPosition(), b.GetPosition()) < near * near;
}

/// Sets the two back to `kDeepest`, the lighter man farther: their common centre of mass stays. False if they
/// need not.
bool setBack(b2Contact& contact, const Breadths& breadths) {
  if (!canBeDeep(contact, breadths)) return false;
  const Overlap overlap = overlapOf(contact);
  if (overlap.depth <= kDeepest) return false;
  b2Body &a = *contact.GetFixtureA()->GetBody(), &b = *contact.GetFixtureB()->GetBody();
  const float share = a.GetMass() / (a.GetMass() + b.GetMass()), by = overlap.depth - kDeepest;
  shift(a, -(1.0f - share) * by * overlap.out);
  shift(b, share * by * overlap.out);
  return true;
}

}  // namespace

struct PhysicsWorld::Impl {
  b2World world{b2Vec2{0.0f, 0.0f}};
  std::array<b2Body*, kMen> bodies{};
  Breadths breadths{};
  [[nodiscard]] b2Body& body(int man) const { return *bodies[static_cast<std::size_t>(man)]; }
};

PhysicsWorld::PhysicsWorld(const std::array<Torso, kMen>& torsos) : impl_(std::make_unique<Impl>()) {
  impl_->world.SetContinuousPhysics(false);  // that is for bullets and walls; there are none
  for (std::size_t i = 0; i < kMen; ++i) {
    const Torso& t = torsos[i];
    b2BodyDef def;
    def.type = b2_dynamicBody;
    def.position = toBox(t.pos);
    def.angle = static_cast<float>(fixedAngle({t.face.y, -t.face.x}));  // chest is the body's +y
    def.fixedRotation = true;
    def.allowSleep = false;
    def.userData.pointer = i;
    impl_->breadths[i] = static_cast<float>(std::max(t.shoulder, t.chest));
    impl_->bodies[i] = impl_->world.CreateBody(&def);
    const b2PolygonShape shape = torsoShape(t);
    b2FixtureDef fixture;
    fixture.shape = &shape;
    fixture.density = 1.0f;
    fixture.friction = 0.2f;
    fixture.restitution = 0.0f;
    fixture.filter = filterOf(t);
    impl_->bodies[i]->CreateFixture(&fixture);
    b2MassData mass;
    mass.mass = static_cast<float>(t.mass_kg);
    mass.center = {0.0f, 0.0f};
    mass.I = 0.0f;
    impl_->bodies[i]->SetMassData(&mass);
  }
}

PhysicsWorld::~PhysicsWorld() = default;

Vec2 PhysicsWorld::pos(int man) const { return fromBox(impl_->body(man).GetPosition()); }
Vec2 PhysicsWorld::vel(int man) const { return fromBox(impl_->body(man).GetLinearVelocity()); }
Vec2 PhysicsWorld::face(int man) const {
  const b2Rot& q = impl_->body(man).GetTransform().q;
  return {-static_cast<double>(q.s), static_cast<double>(q.c)};
}
void PhysicsWorld::push(int man, Vec2 force) { impl_->body(man).ApplyForceToCenter(toBox(force), true); }
void PhysicsWorld::setVelocity(int man, Vec2 vel) { impl_->body(man).SetLinearVelocity(toBox(vel)); }
void PhysicsWorld::turn(int man, double rad_per_s) {
  if (std::abs(rad_per_s * kStep) <= kLeastTurn) return;
  b2Body& body = impl_->body(man);
  body.SetTransform(body.GetPosition(), body.GetAngle() + static_cast<float>(rad_per_s * kStep));
}
void PhysicsWorld::bumpMates(int man) {
  b2Filter filter;
  filter.categoryBits = kAttackers;
  filter.maskBits = static_cast<std::uint16_t>(kAttackers | kDefenders);
  impl_->body(man).GetFixtureList()->SetFilterData(filter);
}
void PhysicsWorld::step() {
  b2World& world = impl_->world;
  world.Step(static_cast<float>(kStep), kVelocityIterations, kPositionIterations);
  bool moved = true;
  for (int pass = 0; pass < kSetBacks && moved; ++pass) {
    moved = false;
    for (b2Contact* contact = world.GetContactList(); contact != nullptr; contact = contact->GetNext())
      moved |= setBack(*contact, impl_->breadths);
  }
}

}  // namespace gapsound
