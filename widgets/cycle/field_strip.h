#pragma once

#include <string_view>
#include <vector>

#include <QLabel>
#include <QWidget>

#include "widgets/inputs/field_editor.h"

namespace jw {

/// A few fields of one struct side by side, each with a short label.
class FieldStrip : public QWidget {
  Q_OBJECT

 public:
  struct Item {
    std::string_view key;
    QString label;
  };

  FieldStrip(const QString& title, const StructInfo& info, std::vector<Item> items,
             QWidget* parent = nullptr);

  /// Shows the fields of the struct at `path`; another path than before gets new editors. Unknown
  /// paths hide the strip.
  void showFields(const Project& project, const QString& path);

 signals:
  void editRequested(const jw::Edit& edit);
  void entryRefused(const QString& message);

 private:
  void build(const QString& path);

  const StructInfo& m_info;
  std::vector<Item> m_items;
  std::vector<QLabel*> m_labels;
  std::vector<FieldEditor*> m_editors;
  QString m_path;
};

}  // namespace jw
