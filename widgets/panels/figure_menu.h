#pragma once

#include <QMenu>

#include "widgets/snapshot.h"

namespace jw {

/// The headline figures of the design with their values, by family; choosing one asks for its
/// working.
class FigureMenu : public QMenu {
  Q_OBJECT

 public:
  explicit FigureMenu(QWidget* parent = nullptr);
  /// Fills the menu anew.
  void showFigures(const Evaluation* evaluation);

 signals:
  void figureChosen(const QString& id);

 private:
  QMenu* familyOf(const QString& id);
};

}  // namespace jw
