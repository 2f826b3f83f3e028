#include "widgets/figures/axis_choice.h"

#include <QHBoxLayout>

namespace jw {

AxisChoice::AxisChoice(const QString& name, const QString& accessibleName, QWidget* parent)
    : QWidget(parent),
      m_field(new FieldChooser(name + QStringLiteral(".field"), accessibleName, this)),
      m_range(new RangeFields(name, this)) {
  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(8);
  m_field->setMaximumWidth(330);
  line->addWidget(m_field, 1);
  line->addWidget(m_range);
  connect(m_field, &FieldChooser::pathChosen, this, &AxisChoice::changed);
  connect(m_range, &RangeFields::rangeTyped, this, [this](const StudyRange& range) {
    m_typed.erase(path());
    m_usual.erase(path());
    if (range.rises()) m_typed[path()] = range;
    emit changed();
  });
}

// The usual range stays while the value is in it.
StudyRange AxisChoice::rangeFor(const FieldRef& field) {
  const auto typed = m_typed.find(field.path);
  if (typed != m_typed.end()) return typed->second;
  const auto kept = m_usual.find(field.path);
  const double value = field.number();
  if (kept != m_usual.end() && value >= kept->second.from && value <= kept->second.to)
    return kept->second;
  return m_usual[field.path] = usualFieldRange(field);
}

void AxisChoice::offer(const Project& project, const std::string& other) {
  m_field->offer(project);
  if (m_field->path().empty()) {
    if (const auto usual = usualAxis(project, 2, other)) m_field->setPath(usual->path);
  }
  const auto field = findField(project, m_field->path());
  if (field) m_range->showRange(*field->info, rangeFor(*field));
}

std::optional<SweepAxis> AxisChoice::axis(const Project& project, std::size_t count) const {
  const auto field = findField(project, m_field->path());
  if (!field || !m_range->range().rises()) return std::nullopt;
  return axisBetween(*field, m_range->range(), count);
}

void AxisChoice::setPath(const std::string& path) {
  m_field->setPath(path);
  emit changed();
}

}  // namespace jw
