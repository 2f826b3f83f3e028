#pragma once

#include <string>

#include "core/checks/evaluation.h"
#include "core/studies/remedies.h"
#include "core/studies/sensitivity.h"

namespace jw {

/// What the command remedies prints.
struct RemediesReport {
  std::string fileName;
  const Project& project;
  const Evaluation& evaluation;
  const Sensitivities& slopes;
  const Remedies& found;
  std::string check;  ///< id of the only verdict that is told; empty = all

  bool tells(std::string_view id) const { return check.empty() || id == check; }
};

/// For programs; `jointwright remedies --help` documents the form.
std::string remediesJson(const RemediesReport& report);

/// The same in short, for people.
std::string remediesText(const RemediesReport& report);

}  // namespace jw
