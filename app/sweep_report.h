#pragma once

#include <string>

#include "core/studies/field_sweep.h"
#include "core/studies/ratio_sweep.h"

namespace jw {

/// A sweep as rows of CSV, one for each value: the value, whether it holds, the smallest margin and
/// its check, every margin, every headline figure. `jointwright sweep --help` documents the form.
std::string sweepCsv(const RatioSweep& sweep);
std::string sweepCsv(const FieldSweep& sweep);
/// A map as rows of CSV, one for each pair of values.
std::string mapCsv(const FieldMap& map);

/// The same in short, for people.
std::string sweepText(const RatioSweep& sweep);
std::string sweepText(const FieldSweep& sweep);
std::string mapText(const FieldMap& map);

}  // namespace jw
