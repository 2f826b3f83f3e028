#pragma once

#include <QWidget>

#include "widgets/inputs/fold_header.h"

class QVBoxLayout;

namespace jw {

/// A collapsible part of the inputs: heading, hairline, body.
class Section : public QWidget {
  Q_OBJECT

 public:
  /// `title` with its mnemonic; `name` is what reveal() and the window's state call it.
  Section(const QString& name, const QString& title, QWidget* parent = nullptr);

  const QString& name() const { return name_; }
  FoldHeader& header() { return *header_; }
  void add(QWidget* content);
  bool isExpanded() const { return header_->isChecked(); }
  void setExpanded(bool expanded) { header_->setChecked(expanded); }

 private:
  QString name_;
  FoldHeader* header_;
  QWidget* body_;
  QVBoxLayout* contents_;
};

}  // namespace jw
