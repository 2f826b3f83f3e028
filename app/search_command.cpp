#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/catalogue_file.h"
#include "app/command_line.h"
#include "app/requested_project.h"
#include "app/search_report.h"
#include "app/study_commands.h"
#include "app/whole_number.h"
#include "core/files/catalogue_table.h"
#include "core/studies/field_sweep.h"
#include "core/studies/pareto_front.h"
#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

template <class T>
using Expected = tl::expected<T, InputError>;

/// "0=1..3/5": the stage and the ratios of the belt.
Expected<void> addBelt(const std::string& text, SearchSpace& space) {
  if (text.empty()) return {};
  const auto equals = text.find('=');
  const bool number = equals == 1 && text[0] >= '0' && text[0] <= '9';
  if (!number) {
    return tl::unexpected(InputError{"'" + text + "' names no stage and range", "--belt",
                                     "write STAGE=FROM..TO/COUNT, e.g. 0=1..3/9"});
  }
  auto ratios = readSweepRange(*structInfo<Stage>().find("ratio"), text.substr(2));
  if (!ratios) {
    ratios.error().where = "--belt";
    return tl::unexpected(ratios.error());
  }
  space.beltStage = text[0] - '0';
  space.beltRatios = std::move(*ratios);
  return {};
}

/// The stage that reducers are put at.
Expected<int> reducerStageOf(const SearchCommand& request, const Project& project) {
  const auto stages = static_cast<long long>(project.active().transmission.size());
  if (request.stage.empty() || stages == 0) return leadingStage(project);
  const auto stage = readWholeNumber(request.stage, 0, stages - 1);
  if (stage) return static_cast<int>(*stage);
  InputError error = stage.error();
  error.where = "--stage";
  error.remedy += fmt::format("; this joint has {} stage{}", stages, stages == 1 ? "" : "s");
  return tl::unexpected(std::move(error));
}

Expected<SearchSpace> spaceOf(const SearchCommand& request, const Project& project) {
  SearchSpace space;
  auto motors =
      readCatalogueFile<MotorEntry>(request.motors, ":/catalogues/motors.csv", readMotorCatalogue);
  if (!motors) return tl::unexpected(motors.error());
  space.motors = std::move(*motors);
  auto reducers =
      readCatalogueFile<Stage>(request.reducers, ":/catalogues/reducers.csv", readReducerCatalogue);
  if (!reducers) return tl::unexpected(reducers.error());
  space.reducers = std::move(*reducers);
  const auto stage = reducerStageOf(request, project);
  if (!stage) return tl::unexpected(stage.error());
  space.reducerStage = *stage;
  if (const auto done = addBelt(request.belt, space); !done) return tl::unexpected(done.error());
  return space;
}

Expected<SearchRequest> studyOf(const SearchCommand& request) {
  SearchRequest study;
  study.mostEvaluated = request.most;
  for (const std::string& text : request.filters) {
    auto filter = readFilter(text);
    if (!filter) {
      filter.error().where = "--where " + filter.error().where;
      return tl::unexpected(filter.error());
    }
    study.filters.push_back(std::move(*filter));
  }
  return study;
}

std::vector<double> valuesOf(const SearchResult& result, const DesignFigure& figure) {
  std::vector<double> values;
  for (const Candidate& one : result.candidates) {
    values.push_back(figure.of(one.point, one.properties));
  }
  return values;
}

/// Best first, by margin those with fewer verdicts left open; what is not known comes last.
std::vector<std::size_t> sortedBy(const SearchResult& result, const DesignFigure& figure) {
  const std::vector<double> values = valuesOf(result, figure);
  std::vector<std::size_t> order(values.size());
  for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
  const double sign = moreIsBetter(figure) ? -1 : 1;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (std::isnan(values[a]) || std::isnan(values[b])) {
      return !std::isnan(values[a]) && std::isnan(values[b]);
    }
    const int openA = result.candidates[a].point.opened, openB = result.candidates[b].point.opened;
    if (moreIsBetter(figure) && openA != openB) return openA < openB;
    return sign * values[a] < sign * values[b];
  });
  return order;
}

Expected<std::vector<std::size_t>> orderOf(const SearchCommand& request,
                                           const SearchResult& result) {
  const auto figure = findFigure(request.sort);
  if (!figure) return tl::unexpected(figure.error());
  if (request.pareto.empty()) return sortedBy(result, *figure);
  const auto first = findFigure(request.pareto[0]);
  if (!first) return tl::unexpected(first.error());
  const auto second = findFigure(request.pareto[1]);
  if (!second) return tl::unexpected(second.error());
  return paretoFront({valuesOf(result, *first), moreIsBetter(*first)},
                     {valuesOf(result, *second), moreIsBetter(*second)});
}

/// The part of this name; the error names the parameter.
template <class List, class NameOf>
Expected<std::uint32_t> placeOf(const List& list, const std::string& name, const NameOf& nameOf) {
  for (std::size_t k = 0; k < list.size(); ++k) {
    if (nameOf(list[k]) == name) return static_cast<std::uint32_t>(k);
  }
  return tl::unexpected(InputError{"no part of the catalogue is called '" + name + "'", "--explain",
                                   "give a motor's and a reducer's name as they stand there"});
}

int explainOne(const SearchCommand& request, const Project& project, const SearchSpace& space) {
  const auto motor =
      placeOf(space.motors, request.explain[0], [](const MotorEntry& entry) { return entry.name; });
  if (!motor) return reportBadInput(motor.error());
  const auto reducer =
      placeOf(space.reducers, request.explain[1], [](const Stage& stage) { return stage.name; });
  if (!reducer) return reportBadInput(reducer.error());
  const Combination which{*motor, *reducer, 0};
  const Project combined = withCombination(project, space, which);
  fmt::print("{}", explanationText(combined, combinationName(space, which)));
  const DesignPoint point = designPoint(evaluate(combined));
  return point.noneShort() ? kAllHold : kSomeShort;
}

Expected<void> adopt(const SearchCommand& request, const Project& project,
                     const SearchReport& report) {
  if (request.adopt.empty() || report.order.empty()) return {};
  const Candidate& best = report.result.candidates[report.order.front()];
  const auto adopted = adoptCombination(project, report.space, best.which);
  if (!adopted) return tl::unexpected(adopted.error());
  return saveProjectFile(QString::fromLocal8Bit(request.adopt.c_str()), *adopted);
}

int search(const SearchCommand& request, const Project& project, const SearchSpace& space) {
  const auto study = studyOf(request);
  if (!study) return reportBadInput(study.error());
  // Bad figures are to be told before the search, not after it.
  if (const auto order = orderOf(request, {}); !order) return reportBadInput(order.error());
  const auto result = searchCatalogue(project, space, *study);
  if (!result) return reportBadInput(result.error());
  const Evaluation base = evaluate(project);
  const std::string by = request.pareto.empty()
                             ? request.sort
                             : fmt::format("{} against {}, the best of both alone",
                                           request.pareto[0], request.pareto[1]);
  const SearchReport report{space, *result, base, *orderOf(request, *result), by};
  if (const auto done = adopt(request, project, report); !done) return reportBadInput(done.error());
  fmt::print("{}", request.asCsv ? searchCsv(report) : searchText(report));
  return report.order.empty() ? kSomeShort : kAllHold;
}

}  // namespace

int runSearch(const SearchCommand& request) {
  const auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  const auto space = spaceOf(request, loaded->project);
  if (!space) return reportBadInput(space.error());
  if (!request.explain.empty()) return explainOne(request, loaded->project, *space);
  return search(request, loaded->project, *space);
}

}  // namespace jw
