#include "core/checks/check_writer.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>

#include <fmt/format.h>

#include "core/checks/cautions.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Parts that a part is built on, itself included.
std::vector<Part> foundations(Part part) {
  switch (part) {
    case Part::Cycle: return {Part::Cycle};
    case Part::Load: return {Part::Cycle, Part::Load};
    case Part::Stages: return {Part::Stages};
    case Part::Chain: return {Part::Cycle, Part::Load, Part::Stages, Part::Chain};
    case Part::Motor: return {Part::Motor};
    case Part::Demand:
      return {Part::Cycle, Part::Load, Part::Stages, Part::Chain, Part::Motor, Part::Demand};
    case Part::Heat:
    case Part::Supply: {
      std::vector<Part> all = foundations(Part::Demand);
      all.push_back(part);
      return all;
    }
    case Part::Continuous: return {Part::Motor, Part::Continuous};
    case Part::Envelope: return {Part::Motor, Part::Envelope};
    case Part::Mix: return {Part::Mix};
  }
  return {};
}

bool present(const Evaluation& result, Part part) {
  switch (part) {
    case Part::Cycle: return result.cycle.has_value();
    case Part::Load: return result.load.has_value();
    case Part::Stages: return result.stages.has_value();
    case Part::Chain: return result.chain.has_value();
    case Part::Motor: return result.motor.has_value();
    case Part::Demand: return result.demand.has_value();
    case Part::Heat: return result.heat.has_value();
    case Part::Supply: return result.supply.has_value();
    case Part::Continuous: return result.envelope && result.envelope->continuous;
    case Part::Envelope: return result.envelope.has_value();
    case Part::Mix:
      return std::none_of(result.missing.begin(), result.missing.end(),
                          [](const MissingInput& m) { return m.part == Part::Mix; });
  }
  return false;
}

CheckState stateOf(double margin, double target) {
  if (!isSet(margin)) return CheckState::Open;
  if (margin < 0) return CheckState::Short;
  return margin < target ? CheckState::Close : CheckState::Holds;
}

/// "0.87 N·m of 1.60 N·m: holds, margin 84 %".
std::string resultLine(const Check& check) {
  if (check.state == CheckState::Open) return "open: an input is missing";
  const double first = check.capacityIsResult ? check.capacity : check.demand;
  const double second = check.capacityIsResult ? check.demand : check.capacity;
  const std::string of = fmt::format("{}{}{}", formatQuantity(first, check.quantity, check.unit),
                                     check.capacityIsResult ? ", wanted " : " of ",
                                     formatQuantity(second, check.quantity, check.unit));
  if (std::isinf(check.margin)) return fmt::format("{}: holds without limit", of);
  return fmt::format("{}: {}, margin {} %", of, stateName(check.state),
                     formatNumber(100 * check.margin, 3));
}

/// Where the value of a field came from.
std::string_view originOf(const FieldRef& field, double value) {
  if (!isSet(value)) return "not given";
  if (!isSet(field.number())) return "from its parts";
  const std::string key(field.info->key);
  const AsWritten& written = field.structInfo->asWritten(field.owner);
  if (value == field.info->defaultValue && !written.typed.contains(key)) return "usual value";
  if (!written.from.gives(key)) return "typed";
  return written.from.catalogue.empty() ? "scaling rule" : "catalogue";
}

/// "Motor: "slim 20 W" of the catalogue motors.csv." beside values that it gave; empty for others.
std::string catalogueNote(const FieldRef& field, std::string_view origin, int stage) {
  const CataloguePart& from = field.structInfo->asWritten(field.owner).from;
  std::string owner(field.structInfo->title);
  if (stage >= 0) owner += fmt::format(" {}", stage + 1);
  if (origin == "scaling rule") {
    return fmt::format("{}: sized by {}, an estimate.", owner, from.part);
  }
  if (origin != "catalogue") return {};
  return fmt::format("{}: \"{}\" of the catalogue {}.", owner, from.part, from.catalogue);
}

/// Index of the stage that a path names; -1 if of none.
int stageIn(std::string_view path) {
  constexpr std::string_view kStages = "transmission[";
  if (path.substr(0, kStages.size()) != kStages) return -1;
  return std::atoi(path.data() + kStages.size());
}

/// The field's symbol; among the fields of several stages with the number of its own: "T_m2".
std::string symbolAt(const FieldInfo& info, std::string_view path, int ownStage) {
  std::string symbol(info.symbol);
  const int stage = stageIn(path);
  if (ownStage >= 0 || stage < 0) return symbol;
  const bool subscript = symbol.find('_') != symbol.npos;
  return fmt::format("{}{}{}", symbol, subscript ? "" : "_", stage + 1);
}

/// The field's label; among the fields of several stages with the number of its own.
std::string labelAt(const FieldInfo& info, std::string_view path, int ownStage) {
  const int stage = stageIn(path);
  if (ownStage >= 0 || stage < 0) return std::string(info.label);
  return fmt::format("{}, stage {}", info.label, stage + 1);
}

/// "Over the daily mix: "pick" 50 %, cycle 2 20 %, idle 30 %."
std::string mixText(const DailyMix& mix) {
  const auto percent = [](double share) {
    return formatQuantity(share, Quantity::Fraction, "%", 3);
  };
  std::string text = "Over the daily mix: ";
  for (const MixedCycle& cycle : mix.cycles) {
    text += fmt::format("{} {}, ", cycle.title, percent(cycle.share));
  }
  return text + fmt::format("idle {}.", percent(mix.idle));
}

/// "Belt", "Coupling" or "Drive".
std::string_view stageNoun(const Stage& stage) {
  if (stage.family == StageFamily::Belt) return "Belt";
  return stage.family == StageFamily::Coupling ? "Coupling" : "Drive";
}

}  // namespace

std::string_view stateName(CheckState state) {
  switch (state) {
    case CheckState::Holds: return "holds";
    case CheckState::Close: return "close";
    case CheckState::Short: return "short";
    case CheckState::Open: return "open";
  }
  return "";
}

void CheckWriter::miss(std::string path) {
  auto& missing = check_.missing;
  if (std::find(missing.begin(), missing.end(), path) == missing.end()) {
    missing.push_back(std::move(path));
  }
}

void CheckWriter::show(double value, std::string_view path) {
  if (!working_) return;
  const auto field = findField(context_.project, path);
  if (!field) throw std::logic_error("a check names a field that does not exist");
  const FieldInfo& info = *field->info;
  for (const WorkingSymbol& shown : working_->symbols) {
    if (shown.path == path) return;
  }
  const std::string_view origin = originOf(*field, value);
  working_->symbols.push_back({symbolAt(info, path, context_.stage),
                               labelAt(info, path, context_.stage), value, info.quantity, info.unit,
                               std::string(origin), std::string(path)});
  const std::string about = catalogueNote(*field, origin, stageIn(path));
  if (working_->note.find(about) == std::string::npos) note(about);
}

double CheckWriter::input(double value, std::string_view path) {
  if (!isSet(value)) miss(std::string(path));
  show(value, path);
  return value;
}

double CheckWriter::stageInput(double value, std::string_view key) {
  if (isSet(value) && !working_) return value;
  return input(value, fmt::format("transmission[{}].{}", context_.stage, key));
}

double CheckWriter::optionalInput(double value, std::string_view path) {
  if (isSet(value)) show(value, path);
  return value;
}

bool CheckWriter::has(Part part) {
  if (present(context_.result, part)) return true;
  const std::vector<Part> needed = foundations(part);
  for (const MissingInput& missing : context_.result.missing) {
    if (std::find(needed.begin(), needed.end(), missing.part) != needed.end()) miss(missing.where);
  }
  return false;
}

double CheckWriter::value(double value, const Derived& about) {
  if (working_) {
    working_->symbols.push_back({std::string(about.symbol),
                                 std::string(about.label),
                                 value,
                                 about.quantity,
                                 about.unit,
                                 std::string(about.origin),
                                 {},
                                 std::string(about.expression)});
  }
  return value;
}

double CheckWriter::valueOf(std::string_view path, double value, const Derived& about) {
  if (!working_) return value;
  this->value(value, about);
  const auto field = findField(context_.project, path);
  if (!field) throw std::logic_error("a check names a field that does not exist");
  if (field->number() != value) return value;
  WorkingSymbol& shown = working_->symbols.back();
  shown.origin = originOf(*field, value);
  shown.path = path;
  return value;
}

std::string CheckWriter::cycleOrigin(Eigen::Index sample) const {
  if (!working_) return {};
  const double time = context_.result.cycle->time[sample];
  return fmt::format("from the cycle at {}", formatQuantity(time, Quantity::Time, "s"));
}

void CheckWriter::follows(std::string_view demand, std::string_view capacity) {
  if (!working_) return;
  demandFrom_ = demand;
  capacityFrom_ = capacity;
}

std::string_view CheckWriter::meanOrigin() const {
  return context_.result.mix ? "from the daily mix" : "from the cycle";
}

bool CheckWriter::hasDay() {
  if (working_ && context_.result.mix) note(mixText(*context_.result.mix));
  return has(Part::Mix);
}

void CheckWriter::formula(std::string_view text) {
  if (working_) working_->formula = text;
}

void CheckWriter::source(std::string_view text) {
  if (working_) working_->source = text;
}

void CheckWriter::note(std::string_view text) {
  if (!working_) return;
  if (!working_->note.empty()) working_->note += ' ';
  working_->note += text;
}

void CheckWriter::at(Eigen::Index sample) {
  if (sample >= 0) check_.time = context_.result.cycle->time[sample];
}

void CheckWriter::compare(double demand, double capacity) {
  compare(demand, capacity, demand == 0 ? kInfinity : capacity / demand - 1);
}

void CheckWriter::compare(double demand, double capacity, double margin) {
  check_.demand = demand;
  check_.capacity = capacity;
  check_.margin = margin;
}

void CheckWriter::compareRise(double demand, double capacity, double base) {
  check_.demand = demand;
  check_.capacity = capacity;
  if (demand > base) {
    check_.margin = (capacity - base) / (demand - base) - 1;
  } else {
    check_.margin = capacity < demand ? -1 : kInfinity;  // a limit below where it all starts
  }
  if (std::isinf(demand)) check_.margin = -1;
}

namespace {

/// Demand and capacity as what follows from the symbols.
void showResults(const Check& check, const CheckWriter& writer, Working& working) {
  if (check.state == CheckState::Open) return;
  const auto add = [&](const char* name, double value, const std::string& expression) {
    working.results.push_back(
        {name, {}, value, check.quantity, check.unit, "result", {}, expression});
  };
  add("Demand", check.demand, writer.demandFrom());
  add("Capacity", check.capacity, writer.capacityFrom());
}

}  // namespace

Check workOut(const CheckKind& kind, const CheckContext& context, Working* working) {
  Check check;
  check.id = kind.id;
  check.stage = context.stage;
  check.title = context.stage < 0 ? std::string(kind.title)
                                  : fmt::format("{} {}, stage {}", stageNoun(context.drive()),
                                                kind.title, context.stage + 1);
  check.demand = check.capacity = check.margin = check.time = kUnset;
  check.quantity = kind.quantity;
  check.unit = kind.unit;
  check.capacityIsResult = kind.capacityIsResult;
  CheckWriter writer(context, check, working);
  kind.work(context, writer);
  if (!check.missing.empty()) check.margin = kUnset;
  check.state = stateOf(check.margin, context.project.requirements.targetMargin);
  if (working) {
    working->result = resultLine(check);
    working->caution = cautionOf(kind.id);
    showResults(check, writer, *working);
  }
  return check;
}

const std::vector<CheckKind>& checkKinds() {
  static const std::vector<CheckKind> kAll = [] {
    std::vector<CheckKind> all;
    for (const auto& family : {supplyChecks(), controllerChecks(), motorChecks(), heatChecks(),
                               driveChecks(), stageChecks(), jointChecks(), endStopChecks()}) {
      all.insert(all.end(), family.begin(), family.end());
    }
    return all;
  }();
  return kAll;
}

}  // namespace jw
