#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/catalogue_entry.h"
#include "core/studies/combination_filter.h"
#include "core/studies/design_points.h"
#include "core/studies/study_run.h"

namespace jw {

/// What is tried: every motor with every reducer, and with every ratio of a belt if one is named.
/// All else of the joint stays as the project has it.
struct SearchSpace {
  std::vector<MotorEntry> motors;
  std::vector<Stage> reducers;
  int reducerStage = 0;            ///< index into the transmission that reducers are put at
  int beltStage = -1;              ///< index of the stage whose ratio varies; -1 = none
  std::vector<double> beltRatios;  ///< of that stage; empty without one

  std::size_t ratios() const { return beltStage < 0 ? 1 : beltRatios.size(); }
  std::size_t size() const { return motors.size() * reducers.size() * ratios(); }
};

/// Most variants that a project is given: as many as a file holds.
inline constexpr std::size_t kMostVariantsKept = 1'000;

/// Most combinations that can be searched at once.
inline constexpr std::size_t kMostCombinations = 100'000'000;

/// Places in the lists of a SearchSpace.
struct Combination {
  std::uint32_t motor = 0;
  std::uint32_t reducer = 0;
  std::uint32_t ratio = 0;  ///< of the belt
  bool operator==(const Combination&) const = default;
};

/// The project with the combination in its active variant.
Project withCombination(const Project& project, const SearchSpace& space, const Combination& which);

/// "Motor name + reducer name", with the belt's ratio if it varies.
std::string combinationName(const SearchSpace& space, const Combination& which);

/// The project with the combination as one more variant, named after it and active. Fails if there
/// is no room for a further variant.
tl::expected<Project, InputError> adoptCombination(const Project& project, const SearchSpace& space,
                                                   const Combination& which);

/// A combination that was evaluated in full, passed the filters and has no short verdict.
struct Candidate {
  Combination which;
  DesignPoint point;
  Properties properties;
};

/// How far a search has come.
struct SearchProgress {
  std::size_t total = 0;      ///< combinations
  std::size_t screened = 0;   ///< of them looked at
  std::size_t survivors = 0;  ///< not rejected by screening
  std::size_t evaluated = 0;  ///< of the survivors, in full
  std::size_t found = 0;
  double secondsLeft = kUnset;  ///< of the part at work
};

struct SearchRequest {
  std::vector<CombinationFilter> filters;
  std::size_t mostEvaluated = 0;  ///< 0 = all survivors; else the lightest by their stated masses
  std::function<void(const Candidate&)> found = {};  ///< one call at a time, from any thread
  /// Likewise, for those with a short verdict after all; the first `mostShort` of them.
  std::function<void(const Candidate&)> fellShort = {};
  std::size_t mostShort = 2'000;
  std::function<void(const SearchProgress&)> progress = {};  ///< from the calling thread
};

struct SearchResult {
  std::vector<Candidate> candidates;                  ///< by motor, reducer and ratio
  std::map<std::string_view, std::size_t> rejected;   ///< by screening, by check
  std::map<std::string_view, std::size_t> fellShort;  ///< evaluated, by the worst check
  std::size_t unknown = 0;  ///< cannot be evaluated for want of a part's data
  SearchProgress counts;
  std::size_t filteredOut = 0;  ///< hold, but do not pass the filters
  bool stopped = false;
};

/// Screens every combination (screening.h) and evaluates the survivors in full. A verdict
/// that the project can tell and a combination cannot, for want of a part's data, is counted in its
/// point (`opened`); one of which nothing but that is known is not found. Fails, naming the
/// field, if the space is empty or too large, if its stages are not there, or if cycle, load or a
/// stage of the project cannot be evaluated.
tl::expected<SearchResult, InputError> searchCatalogue(const Project& project,
                                                       const SearchSpace& space,
                                                       const SearchRequest& request,
                                                       const StudyRun& run = {});

}  // namespace jw
