#include "core/studies/banded_draw.h"

namespace jw {
namespace {

double allowed(const FieldInfo& info, double nominal, double value) {
  const Range& range = info.range;
  if (value > range.high) return range.high;
  const bool below = range.lowExcluded ? value <= range.low : value < range.low;
  if (!below) return value;
  return range.lowExcluded ? range.low + 1e-6 * (nominal - range.low) : range.low;
}

}  // namespace

BandedDraw::BandedDraw(const Project& project, const std::vector<BandedInput>& inputs)
    : project_(project) {
  for (const BandedInput& input : inputs) fields_.push_back(*findField(project_, input.path));
}

bool BandedDraw::set(std::size_t k, double nominal, double value) {
  const FieldInfo& info = *fields_[k].info;
  const double held = allowed(info, nominal, value);
  // The reference was found in the project of this object.
  info.setNumber(const_cast<void*>(fields_[k].owner), held);
  return held == value;
}

std::vector<BandedInput> bandedInputs(const Project& project) {
  std::vector<BandedInput> inputs;
  for (const BandedField& one : bandedFields(project)) {
    const double nominal = one.field.number();
    inputs.push_back({one.field.path, std::string(one.field.info->label), one.field.info->quantity,
                      one.field.info->unit, nominal, one.band,
                      one.band.standardDeviation(nominal)});
  }
  return inputs;
}

}  // namespace jw
