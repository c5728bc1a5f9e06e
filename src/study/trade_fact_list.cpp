#include "study/trade_facts.hpp"

namespace gapsound {
namespace {

constexpr const char* kPractice = "common practice, no source";

/// A look under construction: every change gives another look and leaves this one as it was.
class Drawn {
 public:
  Drawn(const char* formation, const char* front, const char* scheme) {
    s_.source = "trade";
    s_.title = std::string(scheme) + " " + formation + " " + front;
    s_.level = Level::pro;
    s_.offense.formation = formation;
    s_.offense.scheme = scheme;
    s_.defense.front = front;
  }
  [[nodiscard]] Drawn fault(const char* man, FaultKind kind, double amount) const {
    return with([&](Scenario& s) { s.faults.push_back({man, {kind, amount}}); });
  }
  [[nodiscard]] Drawn set(const char* man, std::optional<double> ManSettings::*what, double value) const {
    return with([&](Scenario& s) { s.players[man].*what = value; });
  }
  [[nodiscard]] Drawn at(const char* man, double x, double y) const {
    return set(man, &ManSettings::x, x).set(man, &ManSettings::y, y);
  }
  [[nodiscard]] Drawn onCall(const char* man) const {
    return with([&](Scenario& s) { s.players[man].fit_off = FitOff::call; });
  }
  [[nodiscard]] Drawn call(std::string DefensePlan::*what, const char* word) const {
    return with([&](Scenario& s) { s.defense.*what = word; });
  }
  [[nodiscard]] Drawn play(std::string OffensePlan::*what, const char* word) const {
    return with([&](Scenario& s) { s.offense.*what = word; });
  }
  [[nodiscard]] Drawn hash(const char* spot) const {
    return with([&](Scenario& s) { s.field.spot = spot; });
  }
  [[nodiscard]] Drawn played(Level level) const {
    return with([&](Scenario& s) { s.level = level; });
  }
  [[nodiscard]] Drawn motion(const char* man, const char* kind) const {
    return with([&](Scenario& s) { s.offense.motion = MotionCall{man, kind}; });
  }
  [[nodiscard]] Drawn mixed(const CallMix& mix) const {
    return with([&](Scenario& s) { s.defense.mix = mix; });
  }
  [[nodiscard]] Drawn check(const char* name) const {
    return with([&](Scenario& s) { s.defense.checks.push_back(name); });
  }
  [[nodiscard]] Drawn box() const { return call(&DefensePlan::structure, "box"); }
  [[nodiscard]] Drawn left() const { return play(&OffensePlan::direction, "left"); }
  operator Scenario() const { return s_; }

 private:
  template <class Change>
  [[nodiscard]] Drawn with(Change change) const {
    Drawn other = *this;
    change(other.s_);
    return other;
  }
  Scenario s_;
};

using F = FaultKind;
using Y = Yardstick;
using Facts = std::vector<TradeFact>;

Drawn power() { return {"F01", "D01", "R01"}; }
Drawn counter() { return {"F03", "D03", "R02"}; }
Drawn insideZone() { return {"F13", "D04", "R04"}; }
Drawn wideZone() { return {"F01", "D01", "R06"}; }
Drawn toss() { return {"F01", "D01", "R12"}; }

/// No slant and no shooting backer but what the trial calls; alignments vary as ever.
Drawn steady(const Drawn& look) { return look.mixed({0.22, 0.45, 0.8, 0.0, 0.0}); }

Drawn kicked(const Drawn& look) { return look.fault("SE", F::kicked_out, 1.0); }

Drawn betterTacklers(Drawn look, double skill) {
  for (const char* man : {"S", "M", "W", "SS", "FS"}) look = look.set(man, &ManSettings::tackling, skill);
  return look;
}

/// A trial the simulation does not bear out, with our explanation.
Trial missed(Trial trial, const char* why) {
  trial.shown = false;
  trial.why = why;
  return trial;
}

/// The same in a look or sense the statement does not speak of, tried as well and not borne out.
Trial beyond(Trial trial, const char* why) {
  trial = missed(std::move(trial), why);
  trial.beyond = true;
  return trial;
}

void addNumbersAndDepth(Facts& facts) {
  const Drawn reached = kicked(power()).onCall("S");
  const Drawn high = power().at("SS", 6.0, 12.0);
  facts.push_back(
      {1,
       "a man more in the box whom nobody blocks takes yards away",
       "public analysis of 73,000 pro carries by personnel, 2014",
       {{"8 in the box, not 7", high, power().at("SS", 2.6, 4.5), Y::to_twenty, -1, 4000},
        {"7 in the box, not 6", insideZone(), insideZone().at("SS", 3.4, 4.5), Y::to_twenty, -1, 3000},
        {"7 in the box, the nickel", insideZone(), insideZone().at("NK", 3.4, 4.5), Y::to_twenty, -1,
         3000}}});
  facts.push_back({2,
                   "a deeper safety gives up more on an off-tackle run",
                   kPractice,
                   {{"safety at 12, not 8", reached.set("SS", &ManSettings::depth_yd, 8.0),
                     reached.set("SS", &ManSettings::depth_yd, 12.0), Y::to_twenty, +1, 6000}}});
}

void addSpillAndBox(Facts& facts) {
  facts.push_back({3,
                   "spilled, the ball goes outside; boxed, inside",
                   kPractice,
                   {{"spill, not box", power().box(), power(), Y::crossing, +1, 400}}});
  const Drawn late = power().fault("S", F::scrape_late, 1.0);
  facts.push_back({4,
                   "an end who spills with nobody over the top costs most",
                   kPractice,
                   {{"nobody over the top", power(), late, Y::to_twenty, +1, 3000},
                    {"nobody over the top: outside", power(), late, Y::outside, +1, 300}}});
  const Drawn over = kicked(power()).onCall("S");
  facts.push_back({5,
                   "kicked end, backer over the top anyway: the inside lane is wide",
                   kPractice,
                   {{"over the top anyway: yards", kicked(power()), over, Y::yards, +1, 600},
                    {"over the top anyway: room", kicked(power()), over, Y::room, +1, 1000}}});
  facts.push_back({6,
                   "a puller with no hat on one side of him has a lane there",
                   kPractice,
                   {{"both backers outside him", counter(),
                     counter().onCall("M").fault("M", F::scrape_wide, 3.0), Y::to_twenty, +1}}});
}

void addForceAndCutback(Facts& facts) {
  const Drawn sky = wideZone().call(&DefensePlan::shell, "cover 3 sky");
  facts.push_back(
      {7,
       "force set early lets fewer runs past him; set deep, the alley widens",
       kPractice,
       {{"force 0.8 s late: outside", sky, sky.fault("SS", F::late_read, 0.8), Y::outside, +1, 800},
        {"force too deep", sky, sky.fault("SS", F::too_deep, 4.0), Y::to_twenty, +1, 15000}}});
  const Drawn zone{"F01", "D01", "R04"};
  facts.push_back(
      {8,
       "the far safety held keeps cutbacks short; flowing, long runs rise",
       kPractice,
       {{"far safety flows, zone", zone, zone.fault("FS", F::flowed, 1.0), Y::twelve_plus, +1, 6000},
        {"far safety flows, counter", counter(), counter().fault("FS", F::flowed, 1.0), Y::twelve_plus, +1,
         4000},
        beyond(
            {"far safety flows, power", power(), power().fault("FS", F::flowed, 1.0), Y::twelve_plus, +1,
             600},
            "power seldom cuts back across the ball, and a safety who flows is one more man in its lane")}});
  const Drawn stacked{"F03", "D01", "R02"}, gt{"F13", "D04", "R03"};
  facts.push_back(
      {9,
       "a first backer 0.3 s late to the counter gives up yards",
       kPractice,
       {{"0.3 s late, stacked backer", stacked, stacked.fault("S", F::late_read, 0.3), Y::to_twenty, +1,
         12000},
        beyond({"0.3 s late, two backers", gt, gt.fault("M", F::late_read, 0.3), Y::to_twenty, +1},
               "until he reads he steps downhill all the same, so the puller meets him near the line and "
               "not at his depth"),
        beyond({"0.3 s late, sniffer", counter(), counter().fault("M", F::late_read, 0.3), Y::to_twenty, +1},
               "the second puller is later still, and a backer who waits has not gone the wrong way")}});
}

void addLine(Facts& facts) {
  const Drawn duo{"F01", "D01", "R07"};
  const Drawn stout = duo.set("DT", &ManSettings::push, 1.6), moved = duo.set("DT", &ManSettings::push, 0.5);
  facts.push_back({10,
                   "a double team that moves its tackle gains more than one that is held",
                   kPractice,
                   {{"tackle moved, not stout", stout, moved, Y::to_twenty, +1, 1800},
                    {"tackle moved, not stout", stout, moved, Y::forward, +1, 100}}});
  const Drawn through = power().fault("RG", F::whiff, 1.0).fault("RT", F::whiff, 1.0);
  facts.push_back(
      {11,
       "penetration where the run goes: losses, pullers held up, wider spread",
       kPractice,
       {{"tackle comes through", power(), through, Y::lost, +1, 1500},
        {"right tackle lets him by", power(), power().fault("RT", F::whiff, 1.0), Y::through, -1, 6000},
        {"tackle comes through", power(), through, Y::spread, +1, 15000}}});
  const auto into = [](const Drawn& look) { return look.call(&DefensePlan::movement, "slant strong"); };
  const auto away = [](const Drawn& look) { return look.call(&DefensePlan::movement, "slant weak"); };
  const Drawn run = steady(power()), wide = steady(wideZone());
  facts.push_back(
      {12,
       "a slant into the run stops more, away from it opens the edge",
       kPractice,
       {{"slant into power", run, into(run), Y::stuffed, +1, 4000},
        {"slant into a toss", toss(), into(toss()), Y::stuffed, +1, 20000},
        missed({"slant away from power", run, away(run), Y::outside_gain, +1, 9000},
               "when the line moves away from the run the backers move a gap toward it, and fewer balls get "
               "outside"),
        beyond({"slant away from wide zone", wide, away(wide), Y::outside_gain, +1, 6000}, "as on power"),
        beyond({"slant away from a toss", toss(), away(toss()), Y::outside_gain, +1, 6000}, "as on power"),
        {"slant into wide zone", wide, into(wide), Y::stuffed, +1, 6000}}});
}

void addShootAndTechnique(Facts& facts) {
  const Drawn gt{"F01", "D01", "R03"}, gun{"F13", "D04", "R03"};
  const auto air = [](const Drawn& look) { return look.fault("C", F::whiff, 1.0); };
  const auto shooting = [](const Drawn& look) { return look.call(&DefensePlan::bs_backer, "shoot"); };
  facts.push_back({13,
                   "shooting the puller's gap: a loss with air, worse than staying when blocked back",
                   kPractice,
                   {{"shoots with air", air(gun), shooting(air(gun)), Y::lost, +1, 12000},
                    beyond({"shoots with air, two backs", air(gt), shooting(air(gt)), Y::lost, +1, 8000},
                           "the nose whom the center misses comes through anyway: four snaps in ten are lost "
                           "without the shooter"),
                    {"shoots, blocked back", gt, shooting(gt), Y::to_twenty, +1, 8000}}});
  const Drawn surface{"F06", "D03", "R04"}, spread = steady(insideZone());
  const auto setTo = [](const Drawn& look, const char* side) {
    return look.call(&DefensePlan::strength, side);
  };
  facts.push_back({14,
                   "inside zone bends more to the 3 technique than to the bubble",
                   kPractice,
                   {{"tackle a 3, not a 2i", surface.set("DT", &ManSettings::x, 1.0), surface,
                     Y::inside_guard, +1, 10000},
                    {"front set to the run, not away", setTo(spread, "left"), setTo(spread, "right"),
                     Y::inside_guard, +1, 500}}});
  facts.push_back(
      {15,
       "wider splits: more room inside",
       kPractice,
       {{"wide splits", power(), power().play(&OffensePlan::splits, "wide"), Y::room, +1, 3000}}});
  const Drawn nub{"F11", "D01", "R01"};
  facts.push_back(
      {16,
       "a nub nobody adjusts to is a man short; a corner in the fit makes it good",
       kPractice,
       {{"corner in the fit", nub.at("CR", -13.0, 8.0), nub.at("CR", 6.5, 5.0), Y::to_twenty, -1, 600}}});
}

void addPullers(Facts& facts) {
  const Drawn inside = power().fault("SE", F::crossed_inside, 2.0);
  const Drawn log = power().play(&OffensePlan::variant, "log");
  facts.push_back({18,
                   "log beats kick against a spilling end, kick beats log against a boxing one",
                   kPractice,
                   {{"end came inside: log, not kick", inside, inside.play(&OffensePlan::variant, "log"),
                     Y::to_twenty, +1, 1800},
                    {"spill called: log, not kick", power(), log, Y::to_twenty, +1, 8000},
                    {"box: kick, not log", log.box(), power().box(), Y::to_twenty, +1, 8000}}});
  const Drawn open{"F13", "D03", "R01"}, spread{"F06", "D03", "R01"};
  const auto zone = [](const Drawn& look) { return look.call(&DefensePlan::shell, "cover 3 sky"); };
  const auto man = [](const Drawn& look) { return look.call(&DefensePlan::shell, "cover 1"); };
  facts.push_back(
      {19,
       "power gains more outside against man than against zone with eyes in, the same safety down",
       kPractice,
       {{"man, not zone, open side", zone(open), man(open), Y::outside_gain, +1, 3000},
        {"man, not zone, doublets", zone(spread), man(spread), Y::outside_gain, +1, 3000},
        beyond({"man, not quarters, two backs", power(), man(power()), Y::twelve_plus, +1, 3000},
               "the call for man brings a safety down as well: one man more near the line")}});
  facts.push_back({20,
                   "a late puller hands the ball into a backer nobody blocks",
                   kPractice,
                   {missed({"wrapper 0.6 s late", power(), power().fault("LG", F::late_pull, 0.6),
                            Y::to_twenty, -1, 4000},
                           "the runner waits for him, crosses 0.2 s later and cuts back twice as often; that "
                           "wins back most of what the backer stops")}});
  const Drawn miss = kicked(power()).fault("LG", F::whiff, 1.0);
  facts.push_back({31,
                   "a clean kick gains only with the wrapper's block on the first backer",
                   kPractice,
                   {{"kicked: wrapper hits, not misses", miss, kicked(power()), Y::to_twenty, +1, 1200}}});
}

void addZoneAndPerimeter(Facts& facts) {
  const Drawn flow = wideZone().fault("M", F::over_run, 4.0).fault("W", F::over_run, 4.0);
  facts.push_back({21,
                   "wide zone cuts back on backers who over-run it",
                   kPractice,
                   {{"over-run: cut back", wideZone(), flow, Y::inside_guard, +1, 500},
                    {"over-run: cutback gain", wideZone(), flow, Y::inside_gain, +1, 2500},
                    beyond({"over-run: every run", wideZone(), flow, Y::to_twenty, +1, 2500},
                           "what the cutback gains is lost outside, where the backers now are")}});
  facts.push_back({22,
                   "a crack nobody replaces is a long run; replaced, a short one",
                   kPractice,
                   {{"corner late: 12 and more", toss(), toss().fault("CR", F::late_read, 1.5),
                     Y::twelve_plus, +1, 1300}}});
  const Drawn power_one{"F06", "D03", "R01"}, duo_one{"F06", "D03", "R07"};
  const auto slant = [](const Drawn& look) { return look.call(&DefensePlan::movement, "slant strong"); };
  facts.push_back(
      {23,
       "duo is at least power against a spilling front, less against slants",
       kPractice,
       {{"spill: duo, not power", power_one, duo_one, Y::to_twenty, +1, 2500},
        missed({"slant: duo, not power", slant(power_one), slant(duo_one), Y::to_twenty, -1},
               "a lineman who slants across two men who double is taken along by both, and his backer is not "
               "in the gap he left"),
        beyond(
            {"spill: duo, not power, two backs", power(), Drawn{"F01", "D01", "R07"}, Y::to_twenty, +1, 500},
            "power has the fullback for its kick there; duo sends him at the second backer")}});
  const Drawn slot{"F06", "D03", "R04"};
  facts.push_back(
      {24,
       "fly motion holds the backers and opens the cutback",
       kPractice,
       {{"fly motion away from the run", slot.left(), slot.left().motion("A", "fly"), Y::bent, +1, 8000},
        beyond({"fly motion with the run", slot, slot.motion("A", "fly"), Y::bent, +1, 500},
               "the motion man blocks nobody, and the backers it draws are already on the play side")}});
  const auto school = [](const char* hash) { return toss().hash(hash).played(Level::high_school); };
  const Drawn near = school("right_hash"), far = school("left_hash");
  facts.push_back(
      {25,
       "a run to the wide side of the field has more room; one to the short side ends sooner",
       kPractice,
       {{"wide side: seconds", near, far, Y::seconds, +1, 3500},
        {"wide side: yards", near, far, Y::to_twenty, +1, 2500},
        beyond({"wide side, pro hash marks", toss().hash("right_hash"), toss().hash("left_hash"), Y::seconds,
                +1, 500},
               "pro hash marks stand three yards from the middle: the sideline is far on either side")}});
}

void addTacklersAndAlignment(Facts& facts) {
  const Drawn poor = betterTacklers(power(), -1.5), good = betterTacklers(power(), 1.5);
  facts.push_back({26,
                   "better tacklers: fewer yards, far fewer long runs",
                   kPractice,
                   {{"good, not poor: yards", poor, good, Y::to_twenty, -1, 400},
                    {"good, not poor: 12 and more", poor, good, Y::twelve_plus, -1, 700}}});
  const char* sky = "cover 3 sky";
  facts.push_back(
      {27,
       "a safety rolled down helps on his side and costs on the other",
       kPractice,
       {{"rolled down: run at him", power(), power().call(&DefensePlan::shell, sky), Y::to_twenty, -1, 30000},
        {"rolled down: run away", power().left(), power().left().call(&DefensePlan::shell, sky), Y::to_twenty,
         +1, 2000},
        beyond(
            {"at 4.5, nobody rolls: run at him", power(), power().at("SS", 5.0, 4.5), Y::to_twenty, -1, 8000},
            "so near he stands in the way of a blocker whom from depth he would not meet")}});
  const Drawn up = power().fault("SE", F::upfield, 1.5), up_box = power().box().fault("SE", F::upfield, 1.5);
  facts.push_back({28,
                   "an end who squeezes the down block leaves a smaller lane, spilling or boxing",
                   kPractice,
                   {{"spill: squeezes, not upfield", up, power(), Y::room, -1, 2000},
                    {"box: squeezes, not upfield", up_box, power().box(), Y::room, -1, 600}}});
  const Drawn around{"F17", "D01", "R12"}, through{"F17", "D01", "R01"};
  const auto unbumped = [](const Drawn& look) { return look.check("count from center"); };
  facts.push_back(
      {29,
       "unbalanced with no bump: a man short on the long side",
       kPractice,
       {{"no bump, toss", around, unbumped(around), Y::to_twenty, +1, 6000},
        missed({"no bump, power", through, unbumped(through), Y::to_twenty, +1, 500},
               "the end then stands inside the last blocker, who by rule leaves him to the kick and climbs: "
               "nobody blocks down on him, and the man outside is not blocked")}});
}

}  // namespace

Facts tradeFacts() {
  Facts facts;
  addNumbersAndDepth(facts);
  addSpillAndBox(facts);
  addForceAndCutback(facts);
  addLine(facts);
  addShootAndTechnique(facts);
  addPullers(facts);
  addZoneAndPerimeter(facts);
  addTacklersAndAlignment(facts);
  return facts;
}

}  // namespace gapsound
