#pragma once

#include <optional>

#include <QLabel>
#include <QTextBrowser>
#include <QToolButton>

#include "widgets/edit.h"
#include "widgets/snapshot.h"

namespace jw {

class AcceptanceBar;
class RemedySection;
class FigureMenu;

/// How the chosen verdict came about: formula, symbols with value and origin, result and source;
/// what it depends on most, and what would make it hold.
class WorkingPanel : public QWidget {
  Q_OBJECT

 public:
  explicit WorkingPanel(QWidget* parent = nullptr);

  /// Shows the working of the chosen check as it is in `snapshot`.
  void showSnapshot(const Snapshot& snapshot);
  /// Chooses a check and shows its working.
  void showCheck(const Snapshot& snapshot, const QString& id, int stage);
  /// Chooses a headline figure by its id and shows its working.
  void showFigure(const QString& id);
  QString plainText() const { return m_plain; }
  QString markdown() const { return m_markdown; }

 signals:
  void fieldRequested(const QString& path);
  /// To accept the verdict, withdraw that, or apply a remedy.
  void editRequested(const jw::Edit& edit);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  QString designName() const;
  void fill();
  void showNothing();
  void fillFigure();
  void setHtml(const QString& html);
  QToolButton* makeCopyButton();
  QString slopesHtml(const Check& check) const;
  void follow(const QUrl& link);
  QToolButton* makeFiguresButton();

  Snapshot m_snapshot;
  QString m_id;
  QString m_figure;  ///< id of the headline figure that is shown instead of a check
  int m_stage = -1;
  QString m_plain;
  QString m_markdown;
  QLabel* m_title;
  QTextBrowser* m_text;
  QToolButton* m_copy;
  FigureMenu* m_figures;
  AcceptanceBar* m_acceptance;
  RemedySection* m_remedies;
};

}  // namespace jw
