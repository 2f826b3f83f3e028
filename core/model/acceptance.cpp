// Accepted verdicts: their fields, and keeping them with their stage.
#include "core/model/acceptance.h"

#include <vector>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

const std::vector<FieldInfo>& acceptanceFields() {
  static const std::vector<FieldInfo> kFields{
      text<&Acceptance::check>({"check", "Accepted check", "", "Id of the check, as in JSON."}),
      integer<&Acceptance::stage>(
          {"stage", "Stage", "", "Place in the transmission from 0; -1 for a check of no stage."},
          {-1, 99}),
      text<&Acceptance::note>({"note", "Note", "", "Why the verdict is accepted as it is."}),
      text<&Acceptance::date>({"date", "Date", "", "When it was accepted: 2026-03-31."}),
      number<&Acceptance::demand>(
          {"demand", "Demand then", "", "When it was accepted, in SI units (temperatures in °C)."},
          Quantity::Number, "1"),
      number<&Acceptance::capacity>({"capacity", "Capacity then", "",
                                     "When it was accepted, in SI units (temperatures in °C)."},
                                    Quantity::Number, "1"),
  };
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Acceptance>() {
  static const StructInfo kInfo{"accepted", "Acceptance", acceptanceFields(),
                                &getAsWritten<Acceptance>};
  return kInfo;
}

void followRemovedStage(Variant& variant, int stage) {
  std::erase_if(variant.accepted, [&](const Acceptance& a) { return a.stage == stage; });
  for (Acceptance& one : variant.accepted) one.stage -= one.stage > stage ? 1 : 0;
}

void followInsertedStage(Variant& variant, int stage) {
  for (Acceptance& one : variant.accepted) one.stage += one.stage >= stage ? 1 : 0;
}

void followSwappedStages(Variant& variant, int stage, int to) {
  const auto isStage = [&](int k) {
    return k >= 0 && k < static_cast<int>(variant.transmission.size());
  };
  if (!isStage(stage) || !isStage(to)) return;  // nothing was exchanged
  for (Acceptance& one : variant.accepted) {
    if (one.stage == stage) {
      one.stage = to;
    } else if (one.stage == to) {
      one.stage = stage;
    }
  }
}

}  // namespace jw
