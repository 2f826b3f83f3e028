#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/band.h"
#include "core/model/project.h"
#include "core/quantity/quantity.h"

namespace jw {

/// An input that may be off.
struct BandedInput {
  std::string path;
  std::string label;
  Quantity quantity = Quantity::Number;
  std::string_view unit;  ///< display unit
  double nominal = 0;     ///< [internal unit]
  Band band;
  double deviation = 0;        ///< [internal unit] standard uncertainty u
  std::size_t outOfRange = 0;  ///< draws held at the end of the range that the field allows
};

/// The inputs of the project that have a band.
std::vector<BandedInput> bandedInputs(const Project& project);

/// A project whose banded fields can be set again and again.
class BandedDraw {
 public:
  BandedDraw(const Project& project, const std::vector<BandedInput>& inputs);

  /// Sets input `k` [internal unit]; a value that the field does not allow is held at the nearest
  /// allowed one. Says whether it is allowed as it is.
  bool set(std::size_t k, double nominal, double value);

  const Project& project() const { return project_; }

 private:
  Project project_;
  std::vector<FieldRef> fields_;
};

}  // namespace jw
