#pragma once

#include <string>
#include <vector>

#include "core/checks/check_order.h"
#include "core/checks/evaluation.h"

namespace jw {

/// What `jointwright check` found out about one project.
struct CheckReport {
  std::string fileName;
  Project project;
  Evaluation evaluation;
  std::vector<InputError> notes;  ///< remarks about the file
};

/// "2 short (1 accepted), 3 close, 1 open, 17 hold"; states that no check has are left out.
std::string countStates(const std::vector<Check>& checks);

/// The margin as a signed share in per cent, "unlimited" if nothing is demanded, "–" when open.
std::string formatMargin(const Check& check);

/// Demand and capacity in the check's unit: "4 830 of 7 000 h".
std::string formatDemand(const Check& check);

/// Aligned text for people: remarks on the file, verdicts, headline figures, remarks on inputs, the
/// cautions.
std::string checkTable(const CheckReport& report);

/// The same for programs; `jointwright check --help` documents the form.
std::string checkJson(const CheckReport& report);

}  // namespace jw
