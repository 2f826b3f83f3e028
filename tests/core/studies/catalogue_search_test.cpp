// Searches of small catalogues: against every combination evaluated by hand (own).
#include <algorithm>
#include <atomic>
#include <chrono>
#include <thread>

#include <gtest/gtest.h>

#include "core/studies/pareto_front.h"
#include "tests/core/studies/random_space.h"

namespace jw {
namespace {

SearchSpace smallSpace() {
  SearchSpace space;
  const auto motors = inventedMotors();
  const auto reducers = inventedReducers();
  for (std::size_t k = 0; k < motors.size(); k += 7) space.motors.push_back(motors[k]);
  for (std::size_t k = 0; k < reducers.size(); k += 5) space.reducers.push_back(reducers[k]);
  space.reducerStage = 1;
  space.beltStage = 0;
  space.beltRatios = {1, 2, 3};
  return space;
}

TEST(CatalogueSearch, FindsExactlyWhatHoldsInFull) {
  const Project project = exampleProject(60);
  const SearchSpace space = smallSpace();
  std::atomic<std::size_t> streamed = 0;
  SearchRequest request;
  request.found = [&](const Candidate&) { ++streamed; };
  std::size_t toldShort = 0;
  request.mostShort = 3;
  request.fellShort = [&](const Candidate& one) {
    EXPECT_FALSE(one.point.noneShort());
    ++toldShort;
  };
  const auto result = searchCatalogue(project, space, request);
  ASSERT_TRUE(result) << describe(result.error());
  std::vector<Combination> wanted;
  for (std::uint32_t m = 0; m < space.motors.size(); ++m) {
    for (std::uint32_t r = 0; r < space.reducers.size(); ++r) {
      for (std::uint32_t b = 0; b < 3; ++b) {
        const Combination one{m, r, b};
        if (designPoint(evaluate(withCombination(project, space, one))).holds()) {
          wanted.push_back(one);
        }
      }
    }
  }
  std::vector<Combination> found;
  for (const Candidate& one : result->candidates) found.push_back(one.which);
  EXPECT_EQ(found, wanted);
  EXPECT_GT(found.size(), 3U);
  EXPECT_EQ(streamed, found.size());
  EXPECT_EQ(toldShort, 3U);
  EXPECT_EQ(result->counts.total, space.size());
  EXPECT_EQ(result->counts.screened, space.size());
  EXPECT_EQ(result->counts.evaluated, result->counts.survivors);
  EXPECT_LT(result->counts.survivors, space.size() / 4);
}

// A motor without a brake cannot tell what holds the joint; one without any figure tells nothing.
TEST(CatalogueSearch, CountsVerdictsThatAPartLeavesOpen) {
  Project project = exampleProject(60);
  project.requirements.holdingMeans = HoldingMeans::Brake;
  SearchSpace space = smallSpace();
  space.motors = {{"whole", project.active().motor}, {"no brake", project.active().motor}, {}};
  space.motors[1].motor.brakeTorque = kUnset;
  space.reducers = {project.active().transmission[1]};
  space.beltRatios = {project.active().transmission[0].ratio};
  const auto result = searchCatalogue(project, space, {});
  ASSERT_TRUE(result) << describe(result.error());
  ASSERT_EQ(result->candidates.size(), 2U);
  EXPECT_EQ(result->unknown, 1U);
  EXPECT_EQ(result->candidates[0].point.opened, 0);
  int open = 0;
  for (const Check& check : evaluate(withCombination(project, space, {1, 0, 0})).checks) {
    open += check.state == CheckState::Open ? 1 : 0;
  }
  EXPECT_GT(open, 0);
  EXPECT_EQ(result->candidates[1].point.opened, open);
  SearchRequest request;
  request.filters.push_back(*readFilter("open<=0"));
  EXPECT_EQ(searchCatalogue(project, space, request)->candidates.size(), 1U);
}

TEST(CatalogueSearch, FiltersAreKept) {
  const Project project = exampleProject(60);
  const SearchSpace space = smallSpace();
  const auto all = searchCatalogue(project, space, {});
  SearchRequest request;
  for (const char* text :
       {"mass<=8 kg", "margin motor.torque>=50 %", "motor.temperature_winding_peak<=100 degC"}) {
    const auto filter = readFilter(text);
    ASSERT_TRUE(filter) << describe(filter.error());
    request.filters.push_back(*filter);
  }
  const auto few = searchCatalogue(project, space, request);
  ASSERT_TRUE(all && few);
  std::size_t passing = 0;
  for (const Candidate& one : all->candidates) {
    const Evaluation e = evaluate(withCombination(project, space, one.which));
    const auto torque = std::find_if(e.checks.begin(), e.checks.end(),
                                     [](const Check& c) { return c.id == "motor.torque"; });
    const bool passes = one.properties.mass <= 8 && torque->margin >= 0.5 &&
                        quantityValue(e, "motor.temperature_winding_peak") <= 100;
    passing += passes ? 1 : 0;
  }
  EXPECT_EQ(few->candidates.size(), passing);
  EXPECT_EQ(few->filteredOut, all->candidates.size() - passing);
}

TEST(CatalogueSearch, AdoptsAsAnActiveVariant) {
  const Project project = exampleProject(60);
  const SearchSpace space = smallSpace();
  const auto result = searchCatalogue(project, space, {});
  ASSERT_TRUE(result && !result->candidates.empty());
  const Candidate& one = result->candidates.front();
  const auto adopted = adoptCombination(project, space, one.which);
  ASSERT_TRUE(adopted);
  EXPECT_EQ(adopted->variants.size(), 2U);
  EXPECT_EQ(adopted->active().name, combinationName(space, one.which));
  EXPECT_EQ(designPoint(evaluate(*adopted)).worst, one.point.worst);
  EXPECT_EQ(adopted->variants[0], project.variants[0]);
}

TEST(CatalogueSearch, CancelsWithinFiftyMilliseconds) {
  using Clock = std::chrono::steady_clock;
  SearchSpace space = smallSpace();
  space.motors = inventedMotors();
  space.reducers = inventedReducers();
  for (int k = 0; k < 300; ++k) space.beltRatios.push_back(1 + 0.01 * k);
  std::stop_source source;
  std::atomic<Clock::time_point> asked{};
  StudyRun run;
  run.stop = source.get_token();
  const std::jthread canceller([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(200));
    asked = Clock::now();
    source.request_stop();
  });
  const auto result = searchCatalogue(exampleProject(1000), space, {}, run);
  const std::chrono::duration<double> taken = Clock::now() - asked.load();
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->stopped);
  // The limit is 50 ms; the rest is room for a busy machine.
  EXPECT_LT(taken.count(), 0.25);
}

TEST(CatalogueSearch, RefusesWithAReason) {
  const Project project = exampleProject(60);
  const auto refused = [&](auto change) {
    SearchSpace space = smallSpace();
    change(space);
    const auto result = searchCatalogue(project, space, {});
    return !result && !result.error().remedy.empty();
  };
  EXPECT_TRUE(refused([](SearchSpace& s) { s.motors.clear(); }));
  EXPECT_TRUE(refused([](SearchSpace& s) { s.reducers.clear(); }));
  EXPECT_TRUE(refused([](SearchSpace& s) { s.reducerStage = 2; }));
  EXPECT_TRUE(refused([](SearchSpace& s) { s.beltStage = 1; }));
  EXPECT_TRUE(refused([](SearchSpace& s) { s.beltRatios = {0}; }));
  EXPECT_TRUE(refused([](SearchSpace& s) { s.beltRatios.resize(1'000'000, 1); }));
  Project lame = project;
  lame.load.inertia = kUnset;
  const auto result = searchCatalogue(lame, smallSpace(), {});
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().where, "load.inertia");
}

TEST(Filter, ReadsFiguresAndRefusesWithAReason) {
  EXPECT_DOUBLE_EQ(readFilter("length<=120 mm")->bound, 0.12);
  EXPECT_DOUBLE_EQ(readFilter("margin >= 0.25")->bound, 0.25);
  EXPECT_FALSE(readFilter("margin >= 0.25")->atMost);
  for (const std::string& name : figureList()) {
    ASSERT_TRUE(findFigure(name)) << name;
    EXPECT_FALSE(figureLabel(*findFigure(name)).empty()) << name;
  }
  for (const char* bad : {"mass", "mass<4", "weight<=3 kg", "mass<=3 N", "margin nothing>=1"}) {
    const auto filter = readFilter(bad);
    ASSERT_FALSE(filter) << bad;
    EXPECT_FALSE(filter.error().remedy.empty());
  }
}

TEST(ParetoFront, KeepsWhatNoneBeats) {
  std::mt19937 random(3);
  std::uniform_int_distribution<int> number(0, 30);
  for (const bool more : {false, true}) {
    ParetoAxis a, b{{}, more};
    for (int k = 0; k < 200; ++k) {
      a.value.push_back(k == 5 ? kUnset : number(random));
      b.value.push_back(number(random));
    }
    const auto front = paretoFront(a, b);
    for (std::size_t k = 0; k < 200; ++k) {
      bool beaten = k == 5;
      for (std::size_t j = 0; j < 200; ++j) {
        const double y = more ? -b.value[j] : b.value[j], own = more ? -b.value[k] : b.value[k];
        const bool noWorse = a.value[j] <= a.value[k] && y <= own;
        beaten = beaten || (noWorse && (a.value[j] < a.value[k] || y < own));
      }
      EXPECT_EQ(std::count(front.begin(), front.end(), k), beaten ? 0 : 1) << k;
    }
  }
}

}  // namespace
}  // namespace jw
