#include "widgets/cycle/field_strip.h"

#include <QHBoxLayout>

#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

constexpr int kLeastWidth = 60;  // [px] of an editor
constexpr int kUsualWidth = 86;

}  // namespace

FieldStrip::FieldStrip(const QString& title, const StructInfo& info, std::vector<Item> items,
                       QWidget* parent)
    : QWidget(parent), m_info(info), m_items(std::move(items)) {
  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(6);
  if (!title.isEmpty()) {
    auto* heading = new QLabel(title, this);
    heading->setProperty("role", "muted");
    line->addWidget(heading);
  }
  for (const Item& item : m_items) {
    auto* label = new QLabel(item.label, this);
    label->setProperty("role", "muted");
    label->setToolTip(fieldToolTip(*m_info.find(item.key)));
    line->addWidget(label);
    m_labels.push_back(label);
  }
  line->addStretch();
}

void FieldStrip::build(const QString& path) {
  for (FieldEditor* editor : m_editors) {
    editor->widget()->hide();
    editor->widget()->deleteLater();
  }
  m_editors.clear();
  m_path = path;
  auto* line = static_cast<QHBoxLayout*>(layout());
  for (std::size_t k = 0; k < m_items.size(); ++k) {
    const FieldInfo& info = *m_info.find(m_items[k].key);
    FieldEditor* editor = makeEditor(info, path + '.' + toQString(info.key), this);
    QWidget* widget = editor->widget();
    widget->setObjectName("strip." + widget->objectName());
    widget->setMinimumWidth(kLeastWidth);
    widget->setMaximumWidth(kUsualWidth);
    line->insertWidget(line->indexOf(m_labels[k]) + 1, widget);
    widget->show();
    m_labels[k]->setBuddy(widget);
    connect(&editor->link(), &FieldLink::editRequested, this, &FieldStrip::editRequested);
    connect(&editor->link(), &FieldLink::entryChanged, this,
            [this, editor] { emit entryRefused(editor->wrongEntry()); });
    m_editors.push_back(editor);
  }
}

void FieldStrip::showFields(const Project& project, const QString& path) {
  const auto first =
      findField(project, (path + '.' + toQString(m_items.front().key)).toStdString());
  setVisible(first.has_value());
  if (!first) return;
  if (path != m_path) build(path);
  for (FieldEditor* editor : m_editors) {
    editor->showField(
        {editor->link().path().toStdString(), &editor->info(), first->structInfo, first->owner});
  }
}

}  // namespace jw
