#include "core/checks/acceptance_check.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/checks/check_writer.h"

namespace jw {
namespace {

bool isOf(const Acceptance& acceptance, std::string_view check, int stage) {
  return acceptance.check == check && acceptance.stage == stage;
}

bool isKnown(std::string_view id) {
  const auto& kinds = checkKinds();
  return std::any_of(kinds.begin(), kinds.end(), [&](const CheckKind& k) { return k.id == id; });
}

/// What became of the check that an acceptance names.
std::string whatBecame(const Acceptance& acceptance, std::size_t stages) {
  if (!isKnown(acceptance.check)) {
    return fmt::format("no check has the id '{}'", acceptance.check.substr(0, 80));
  }
  if (acceptance.stage >= static_cast<int>(stages)) {
    return fmt::format("'{}' is accepted of stage {}, but there are {}", acceptance.check,
                       acceptance.stage + 1, stages);
  }
  return fmt::format("'{}' is accepted, but it is not judged here", acceptance.check);
}

void noteLost(const Acceptance& acceptance, std::size_t at, std::size_t stages,
              Evaluation& result) {
  result.notices.push_back({{whatBecame(acceptance, stages), fmt::format("accepted[{}].check", at),
                             "it is kept and counts for nothing"}});
}

}  // namespace

tl::expected<void, InputError> mayAccept(const Check& check) {
  const auto refuse = [&](std::string what, std::string remedy) {
    return tl::unexpected(InputError{std::move(what), check.title, std::move(remedy)});
  };
  if (check.state == CheckState::Open) {
    return refuse("an open verdict says nothing that could be accepted",
                  "give the input that it needs");
  }
  if (check.state == CheckState::Holds) return refuse("it holds", "nothing needs to be accepted");
  if (!std::isfinite(check.demand) || !std::isfinite(check.capacity)) {
    return refuse("its demand is without limit", "only a finite verdict can be accepted");
  }
  return {};
}

Acceptance acceptanceOf(const Check& check, std::string note, std::string date) {
  Acceptance one;
  one.check = check.id;
  one.stage = check.stage;
  one.note = std::move(note);
  one.date = std::move(date);
  one.demand = check.demand;
  one.capacity = check.capacity;
  return one;
}

void putAcceptance(Variant& variant, Acceptance acceptance) {
  withdrawAcceptance(variant, acceptance.check, acceptance.stage);
  variant.accepted.push_back(std::move(acceptance));
}

void withdrawAcceptance(Variant& variant, std::string_view check, int stage) {
  std::erase_if(variant.accepted, [&](const Acceptance& a) { return isOf(a, check, stage); });
}

bool withinBand(double now, double then, double band) {
  return std::isfinite(now) && std::isfinite(then) && std::abs(now - then) <= band * std::abs(then);
}

void markAccepted(const Project& project, Evaluation& result) {
  const Variant& variant = project.active();
  const double band = project.requirements.acceptedBand;
  for (std::size_t k = 0; k < variant.accepted.size(); ++k) {
    const Acceptance& one = variant.accepted[k];
    const auto check = std::find_if(result.checks.begin(), result.checks.end(),
                                    [&](const Check& c) { return isOf(one, c.id, c.stage); });
    if (check == result.checks.end()) {
      noteLost(one, k, variant.transmission.size(), result);
      continue;
    }
    const bool stands = withinBand(check->demand, one.demand, band) &&
                        withinBand(check->capacity, one.capacity, band);
    check->accepted = AcceptedVerdict{one.note, one.date, stands};
  }
}

bool standsAccepted(const Check& check) { return check.accepted && check.accepted->stands; }

std::string acceptedText(const Check& check) {
  if (!check.accepted) return {};
  std::string text = check.accepted->stands ? "accepted" : "reopened, was accepted";
  if (!check.accepted->date.empty()) text += " " + check.accepted->date;
  return check.accepted->note.empty() ? text : text + ": " + check.accepted->note;
}

}  // namespace jw
