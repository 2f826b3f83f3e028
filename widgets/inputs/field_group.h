#pragma once

#include <span>
#include <vector>

#include <QString>

#include "core/model/field_catalogue.h"

namespace jw {

/// The fields of one struct of a project, in order.
struct FieldGroup {
  QString path;  ///< "motor", "transmission[1]"; empty for the project itself
  std::span<const FieldRef> fields;

  const StructInfo& info() const { return *fields.front().structInfo; }
  const void* owner() const { return fields.front().owner; }
  const FieldRef* find(std::string_view key) const;
};

/// Every field of a project, by struct. Refers into the project, which has to outlive it.
class ProjectFields {
 public:
  explicit ProjectFields(const Project& project);
  const std::vector<FieldGroup>& groups() const { return groups_; }
  const FieldGroup* find(const QString& path) const;
  /// The items of a list, "transmission" or "cycle.segments".
  std::vector<FieldGroup> items(const QString& listPath) const;

 private:
  std::vector<FieldRef> fields_;
  std::vector<FieldGroup> groups_;
};

}  // namespace jw
