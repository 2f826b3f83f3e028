#pragma once

#include <QString>

#include "core/studies/remedies.h"
#include "widgets/theme/palette.h"

namespace jw {

/// What of the remedies is unfolded, and whether they may be applied now.
struct RemedyFolds {
  bool all = false;     ///< more than the first few
  bool cannot = false;  ///< inputs that do not restore the margin alone
  bool apply = true;
};

/// Links of remediesHtml.
inline constexpr const char* kApplyLink = "remedy:apply:";  ///< and the remedy's index
inline constexpr const char* kAllLink = "remedy:all";
inline constexpr const char* kCannotLink = "remedy:cannot";
inline constexpr const char* kCancelLink = "remedy:cancel";
inline constexpr const char* kSearchLink = "remedy:search";

/// "1.2 → 1.5 kg·cm², +25 %".
QString changeText(const Remedy& remedy);

/// "Motor temperature gets short; Holding holds": the verdicts whose state it changes, at most
/// three by name. Empty if there are none.
QString consequencesText(const Remedy& remedy);

/// The remedies of one verdict: the designer's own, those that ask for less, and what cannot.
/// Labels link to the fields, "apply" to the remedy.
QString remediesHtml(const CheckRemedies& found, const RemedyFolds& folds, const Palette& palette);

}  // namespace jw
