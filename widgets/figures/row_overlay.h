#pragma once

#include <limits>
#include <vector>

#include <qcustomplot.h>

#include "widgets/figures/cycle_view.h"
#include "widgets/theme/plot_style.h"

namespace jw {

/// One entry of a row's key: a sample of the line, its name and, with the cursor shown, its value.
struct KeyEntry {
  QString text;
  QPen pen;
  QColor ink;
  QString value;  ///< at the cursor; empty without one
};

/// The key above a row and the cursor across it.
class RowOverlay : public QCPLayerable {
  Q_OBJECT

 public:
  RowOverlay(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);

  void setStyle(const PlotStyle* style) { m_style = style; }
  void setTitle(const QString& title) { m_title = title; }
  void setEntries(std::vector<KeyEntry> entries) { m_entries = std::move(entries); }
  void setCursor(double time, bool readTime);
  /// Height [px] that the key takes above the row.
  static int height() { return 20; }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  void draw(QCPPainter* painter) override;

 private:
  void drawKey(QCPPainter* painter) const;
  double entryWidth(const KeyEntry& entry, bool tight) const;
  void drawEntry(QCPPainter* painter, const KeyEntry& entry, double x, bool tight) const;
  void drawCursor(QCPPainter* painter) const;

  QCPAxisRect* m_rect;
  const PlotStyle* m_style = nullptr;
  QString m_title;
  std::vector<KeyEntry> m_entries;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
  bool m_readTime = false;
};

/// Shades every second segment behind a row and names them above it where there is room.
class BandOverlay : public QCPLayerable {
  Q_OBJECT

 public:
  BandOverlay(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);

  void setStyle(const PlotStyle* style) { m_style = style; }
  void setBands(const std::vector<CycleBand>& bands, bool named);

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  void draw(QCPPainter* painter) override;

 private:
  void drawName(QCPPainter* painter, const CycleBand& band, const QRectF& area) const;

  QCPAxisRect* m_rect;
  const PlotStyle* m_style = nullptr;
  std::vector<CycleBand> m_bands;
  bool m_named = false;
};

}  // namespace jw
