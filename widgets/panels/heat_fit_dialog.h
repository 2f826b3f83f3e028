#pragma once

#include <array>
#include <optional>
#include <thread>

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>

#include "core/studies/heat_fit.h"
#include "widgets/edit.h"
#include "widgets/figures/line_chart_canvas.h"

namespace jw {

/// Takes a measured heating or cooling curve as text and finds the motor's thermal network from it.
/// The fit runs beside the window; the last text wins.
class HeatFitDialog : public QDialog {
  Q_OBJECT

 public:
  /// `ambient` [°C] is proposed as that of the measurement.
  explicit HeatFitDialog(double ambient, QWidget* parent = nullptr);

  void setText(const QString& text) { m_text->setPlainText(text); }
  /// Reads a file into the text; `fileName` then stands in the messages.
  void openFile(const QString& fileName);
  const std::optional<HeatFit>& fit() const { return m_fit; }

 signals:
  void editRequested(const jw::Edit& edit);
  void fitted();  ///< a fit has ended, well or not

 protected:
  void changeEvent(QEvent* event) override;

 private:
  QLayout* makeEntry();
  QLayout* makeResult();
  QLayout* makeButtons();
  void askFile();
  void readText();
  void startFit(HeatCurve curve);
  void finishFit(const HeatCurve& curve, const tl::expected<HeatFit, InputError>& fit);
  void showFit(const HeatCurve& curve, const HeatFit& fit);
  void refuse(const InputError& error);
  void markLine(int number);
  void clearResult();

  QString m_name;
  QPlainTextEdit* m_text;
  QLineEdit* m_ambient;
  QLabel* m_message;
  std::array<QLabel*, 4> m_values{};
  QLabel* m_rms;
  QPushButton* m_use;
  LineChartCanvas* m_curve = nullptr;
  LineChartCanvas* m_residual = nullptr;
  QTimer m_pause;
  std::optional<HeatFit> m_fit;
  std::optional<HeatCurve> m_next;  ///< waits for the running fit to end
  bool m_running = false;
  std::jthread m_worker;  // last: it ends first
};

}  // namespace jw
