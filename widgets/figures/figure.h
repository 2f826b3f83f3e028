#pragma once

#include <limits>

#include <QLabel>
#include <QWidget>

#include "widgets/edit.h"
#include "widgets/snapshot.h"

namespace jw {

/// A picture of an evaluation, with a cursor in time that all views share.
class Figure : public QWidget {
  Q_OBJECT

 public:
  explicit Figure(QWidget* parent = nullptr);

  virtual void showSnapshot(const Snapshot& snapshot) = 0;
  /// Short name for files and the command line: "envelope".
  virtual QString figureName() const = 0;
  /// Name for people: "Envelope".
  virtual QString title() const = 0;
  /// Name of the picture that is in front, for export: one of figureNames().
  virtual QString exportName() const { return figureName(); }
  /// Adds what the figure has worked out by itself to a snapshot, so that paper shows the same.
  virtual void addStudies(Snapshot&) const {}

  /// Moves the cursor to `s` [s]; NaN takes it away. Sends no signal.
  void setCursorTime(double s);
  double cursorTime() const { return m_cursor; }

 public slots:
  /// Puts the figure on the clipboard as it would be printed.
  void copyPicture() const;

 signals:
  void cursorTimeChanged(double s);          ///< the person moved the cursor
  void fieldRequested(const QString& path);  ///< a missing input was clicked
  void exportRequested(const QString& figureName);
  void editRequested(const jw::Edit& edit);  ///< the person changed something in the figure

 protected:
  virtual void drawCursor() = 0;  ///< at cursorTime()
  virtual void restyle() = 0;     ///< the theme has changed
  virtual void zoomBy(double factor) = 0;
  virtual void resetZoom() = 0;

  /// The person moved the cursor.
  void moveCursor(double s);
  /// Remembers the snapshot for export, and tells what is missing over the figure if it is empty:
  /// what kept `parts` from being made (all if none are named).
  void keepSnapshot(const Snapshot& snapshot, bool empty, const std::vector<Part>& parts = {});
  /// The same with an HTML text of one's own over the figure; none if it is empty.
  void keepSnapshotWithNotice(const Snapshot& snapshot, const QString& notice);

  void changeEvent(QEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  bool stepCursor(int key, bool large);
  void placeNotice();

  Snapshot m_snapshot;
  QLabel* m_notice;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
  double m_period = 0;
};

}  // namespace jw
