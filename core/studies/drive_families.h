#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "core/studies/drive_shapes.h"

namespace jw::drive {

using Errors = std::vector<InputError>;
using Result = tl::expected<DriveShapes, Errors>;

/// The drawing of each family; see driveShapes.
Result planetary(const Stage& stage, const std::string& path);
Result gearPair(const Stage& stage, const std::string& path);
Result cycloid(const Stage& stage, const std::string& path);
Result strainWave(const Stage& stage, const std::string& path);
Result rollers(const Stage& stage, const std::string& path);
Result belt(const Stage& stage, const std::string& path);
Result coupling(const Stage& stage, const std::string& path);
Result givenRatio(const Stage& stage, const std::string& path);

/// Collects the fields that a drawing needs and lacks.
class Needs {
 public:
  explicit Needs(std::string path) : path_(std::move(path)) {}

  /// Asks for `value` of the field `key`; `example` says what it could be.
  void positive(double value, const char* key, const char* example) {
    if (!std::isfinite(value)) return add("not given", key, example);
    if (value <= 0) add("has to be more than 0", key, example);
  }
  void add(std::string what, const char* key, std::string remedy) {
    errors_.push_back({std::move(what), path_ + "." + key, std::move(remedy)});
  }
  bool met() const { return errors_.empty(); }
  tl::unexpected<Errors> errors() const { return tl::unexpected<Errors>(errors_); }

 private:
  std::string path_;
  Errors errors_;
};

/// The module [m], or 1 mm with a remark.
double moduleOf(const Toothing& toothing, DriveShapes& shapes);

/// "20 teeth".
std::string count(double number, std::string_view noun);

}  // namespace jw::drive
