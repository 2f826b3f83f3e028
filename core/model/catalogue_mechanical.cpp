// Field catalogue of variant and project.
#include <array>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

const auto& variantFields() {
  static const std::array kFields{
      text<&Variant::name>({"name", "Variant", "", "A name for this way to build the actuator."})};
  return kFields;
}

const auto& projectFields() {
  static const std::array kFields{
      text<&Project::title>({"title", "Title", "", "What this joint is."}),
      text<&Project::note>({"note", "Note", "", "Anything worth keeping."})};
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Variant>() {
  static const StructInfo kInfo{"variant", "Variant", variantFields(), &getAsWritten<Variant>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Project>() {
  static const StructInfo kInfo{"project", "Project", projectFields(), &getAsWritten<Project>};
  return kInfo;
}

}  // namespace jw
