#pragma once

#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "core/checks/evaluation.h"

namespace jw {

/// Whether a verdict can be accepted as it stands: only one that is short or close, with finite
/// demand and capacity; an open one says nothing yet, one that holds asks for nothing. The error
/// says why not and what would be right.
tl::expected<void, InputError> mayAccept(const Check& check);

/// The acceptance of a check with its demand and capacity of now. `date` is ISO 8601, as given.
Acceptance acceptanceOf(const Check& check, std::string note, std::string date);

/// Puts it into the variant in place of an earlier one of the same check and stage.
void putAcceptance(Variant& variant, Acceptance acceptance);

/// Takes out every acceptance of that check and stage.
void withdrawAcceptance(Variant& variant, std::string_view check, int stage);

/// Whether a value is within `band` of what it was: |now - then| <= band |then|, of temperatures in
/// °C; from 0 only 0 is, and nothing that is missing or infinite is.
bool withinBand(double now, double then, double band);

/// Fills Check::accepted from the active variant; the last of several acceptances of one check
/// counts. Adds a notice of each that belongs to no check.
void markAccepted(const Project& project, Evaluation& result);

/// Whether someone has accepted the check and neither demand nor capacity has moved since.
bool standsAccepted(const Check& check);

/// "accepted 2026-03-31: note", "reopened, was accepted 2026-03-31: note"; empty if nobody did.
std::string acceptedText(const Check& check);

}  // namespace jw
