#pragma once

#include <map>
#include <optional>

#include "widgets/figures/chooser.h"
#include "widgets/figures/range_fields.h"

namespace jw {

/// Which input is varied, and over what range: by choice or as usual.
class AxisChoice : public QWidget {
  Q_OBJECT

 public:
  /// Object names are `name`.field, `name`.from and `name`.to.
  AxisChoice(const QString& name, const QString& accessibleName, QWidget* parent = nullptr);

  /// Offers the project's numbers. The first time, and when the chosen one is gone, it takes what
  /// usualAxis proposes, `other` left out.
  void offer(const Project& project, const std::string& other = {});
  /// The values to try; empty where there is none.
  std::optional<SweepAxis> axis(const Project& project, std::size_t count) const;
  void setPath(const std::string& path);
  std::string path() const { return m_field->path(); }

 signals:
  void changed();

 private:
  StudyRange rangeFor(const FieldRef& field);

  std::map<std::string, StudyRange> m_typed;
  std::map<std::string, StudyRange> m_usual;
  FieldChooser* m_field;
  RangeFields* m_range;
};

}  // namespace jw
