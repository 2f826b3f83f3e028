#include "core/physics/load_input.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/physics/carried_masses.h"
#include "core/physics/extension_spring.h"
#include "core/physics/external_torque.h"

namespace jw {
namespace {

using Errors = std::vector<InputError>;

void needInertia(const Load& load, Errors& errors) {
  if (isSet(load.inertia)) return;
  if (load.masses.empty()) {
    errors.push_back({"the link inertia is not given", "load.inertia",
                      "inertia of the moved link about the joint axis"});
  } else if (load.linkMass > 0) {
    errors.push_back({"the link has a mass, but its inertia is not given", "load.inertia",
                      "inertia of the link without the masses listed; or list the link too"});
  }
}

void needMasses(const Load& load, Errors& errors) {
  for (std::size_t k = 0; k < load.masses.size(); ++k) {
    if (isSet(load.masses[k].mass)) continue;
    errors.push_back({"this mass is not given", fmt::format("load.masses[{}].mass", k),
                      "type it in, or remove the body"});
  }
}

void needFriction(const Load& load, Errors& errors) {
  if (!isSet(load.breakawayFriction) || isSet(load.stribeckSpeed)) return;
  errors.push_back({"the speed over which friction falls is not given", "load.stribeckSpeed",
                    "type it in, or leave out the friction at rest"});
}

void needSpring(const Load& load, Errors& errors) {
  if (!extensionSpring(load).given()) return;
  const auto need = [&errors](double value, std::string_view what, std::string_view key) {
    if (isSet(value)) return;
    errors.push_back({fmt::format("the extension spring's {} is not given", what),
                      fmt::format("load.{}", key), "measure it, or take it from a drawing"});
  };
  need(load.extensionFreeLength, "free length", "extensionFreeLength");
  need(load.extensionArm, "arm", "extensionArm");
  need(load.extensionPost, "fixed eye", "extensionPost");
}

bool hangsLoose(const ExtensionSpring& spring, const Eigen::ArrayXd& angle) {
  if (!spring.given()) return false;
  return std::any_of(angle.begin(), angle.end(),
                     [&](double q) { return spring.lengthAt(q) < spring.freeLength; });
}

}  // namespace

std::vector<InputError> loadInputErrors(const Load& load) {
  Errors errors;
  needInertia(load, errors);
  needMasses(load, errors);
  if (load.gravity > 0 && gravityVector(load).isZero(0)) {
    errors.push_back({"the direction of gravity has no length", "load.downY",
                      "give at least one part of it, such as 0, -1, 0"});
  }
  needFriction(load, errors);
  needSpring(load, errors);
  if (const auto table = externalTable(load); !table) {
    errors.push_back({table.error().what, "load.externalTable", table.error().remedy});
  }
  return errors;
}

std::vector<InputError> loadRemarks(const Load& load, const SampledCycle& cycle) {
  Errors remarks;
  if (load.breakawayFriction < load.coulombFriction) {
    remarks.push_back({"the friction at rest is less than the dry friction in motion",
                       "load.breakawayFriction", "it is the larger of the two as a rule"});
  }
  if (load.stopHigh <= load.stopLow) {
    remarks.push_back({"the upper end stop does not lie above the lower one", "load.stopHigh",
                       "exchange the two"});
  }
  if (load.externalOver != ExternalOver::None && load.externalTable.empty()) {
    remarks.push_back({"the table of external torques is empty", "load.externalTable",
                       "type pairs, or choose none"});
  }
  if (hangsLoose(extensionSpring(load), cycle.angle)) {
    remarks.push_back({"the extension spring hangs loose over part of the cycle",
                       "load.extensionFreeLength",
                       "a shorter spring, or eyes that stand farther apart"});
  }
  return remarks;
}

}  // namespace jw
