#include "widgets/inputs/field_group.h"

#include <algorithm>
#include <iterator>

#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

QString parentPath(const FieldRef& field) {
  const std::size_t own = field.info->key.size();
  const std::size_t dot = field.path.size() > own ? 1 : 0;
  return toQString(std::string_view(field.path).substr(0, field.path.size() - own - dot));
}

}  // namespace

const FieldRef* FieldGroup::find(std::string_view key) const {
  const auto found = std::find_if(fields.begin(), fields.end(),
                                  [&](const FieldRef& f) { return f.info->key == key; });
  return found == fields.end() ? nullptr : &*found;
}

ProjectFields::ProjectFields(const Project& project) : fields_(allFields(project)) {
  for (auto first = fields_.cbegin(); first != fields_.cend();) {
    const auto last = std::find_if(first, fields_.cend(), [&](const FieldRef& f) {
      return f.structInfo != first->structInfo || f.owner != first->owner;
    });
    groups_.push_back({parentPath(*first), {first, last}});
    first = last;
  }
}

const FieldGroup* ProjectFields::find(const QString& path) const {
  const auto found = std::find_if(groups_.begin(), groups_.end(),
                                  [&](const FieldGroup& g) { return g.path == path; });
  return found == groups_.end() ? nullptr : &*found;
}

std::vector<FieldGroup> ProjectFields::items(const QString& listPath) const {
  const QString start = listPath + '[';
  std::vector<FieldGroup> found;
  std::copy_if(groups_.begin(), groups_.end(), std::back_inserter(found),
               [&](const FieldGroup& g) { return g.path.startsWith(start); });
  return found;
}

}  // namespace jw
