#include "widgets/panels/heat_fit_dialog.h"

#include <QFile>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QRegularExpression>
#include <QTextBlock>
#include <QVBoxLayout>

#include "core/files/heat_curve.h"
#include "widgets/panels/heat_fit_view.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kPause = 250;  // [ms] without a change before the text is read

QLabel* makeNote(const QString& text, const char* role) {
  auto* label = new QLabel(text);
  label->setProperty("role", role);
  label->setWordWrap(true);
  return label;
}

LineChart emptyChart(const QString& title) {
  LineChart chart;
  chart.title = title;
  chart.x.title = HeatFitDialog::tr("time");
  return chart;
}

}  // namespace

HeatFitDialog::HeatFitDialog(double ambient, QWidget* parent)
    : QDialog(parent), m_name(tr("pasted text")) {
  setObjectName(QStringLiteral("heatFit"));
  setWindowTitle(tr("Fit a measured heating curve"));
  m_curve = new LineChartCanvas(this);
  m_residual = new LineChartCanvas(this);
  auto* left = new QVBoxLayout;
  left->addLayout(makeEntry(), 1);
  left->addLayout(makeResult());
  left->addLayout(makeButtons());
  auto* right = new QVBoxLayout;
  right->addWidget(m_curve, 3);
  right->addWidget(m_residual, 2);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(16, 16, 16, 16);
  row->setSpacing(16);
  row->addLayout(left, 2);
  row->addLayout(right, 3);
  m_ambient->setText(quantityText(ambient, Quantity::Temperature));
  m_pause.setSingleShot(true);
  connect(&m_pause, &QTimer::timeout, this, &HeatFitDialog::readText);
  clearResult();
  m_text->setFocus();
  resize(940, 600);
}

QLayout* HeatFitDialog::makeEntry() {
  auto* column = new QVBoxLayout;
  auto* open = new QPushButton(tr("&Open…"), this);
  open->setObjectName(QStringLiteral("heatFit.open"));
  open->setAutoDefault(false);
  connect(open, &QPushButton::clicked, this, &HeatFitDialog::askFile);
  auto* head = new QHBoxLayout;
  head->addWidget(makeNote(tr("Paste time, winding temperature and the heat put in"), "muted"), 1);
  head->addWidget(open);
  m_text = new QPlainTextEdit(this);
  m_text->setObjectName(QStringLiteral("heatFit.text"));
  m_text->setAccessibleName(tr("Measured curve"));
  m_text->setLineWrapMode(QPlainTextEdit::NoWrap);
  m_text->setTabChangesFocus(true);
  m_text->setPlaceholderText(tr("time [min], winding [degC], power [W]\n0, 22.0, 35\n1, 31.4, 35"));
  connect(m_text, &QPlainTextEdit::textChanged, this, [this] { m_pause.start(kPause); });
  m_ambient = new QLineEdit(this);
  m_ambient->setObjectName(QStringLiteral("heatFit.ambient"));
  m_ambient->setAccessibleName(tr("Ambient while measuring"));
  connect(m_ambient, &QLineEdit::textChanged, this, [this] { m_pause.start(kPause); });
  auto* form = new QFormLayout;
  form->addRow(tr("&Ambient while measuring"), m_ambient);
  m_message = makeNote({}, "error");
  m_message->setObjectName(QStringLiteral("heatFit.message"));
  column->addLayout(head);
  column->addWidget(m_text, 1);
  column->addLayout(form);
  column->addWidget(m_message);
  return column;
}

QLayout* HeatFitDialog::makeResult() {
  auto* form = new QFormLayout;
  form->setHorizontalSpacing(16);
  const std::vector<FittedRow> rows = fittedRows({});
  for (std::size_t k = 0; k < m_values.size(); ++k) {
    m_values[k] = new QLabel(this);
    m_values[k]->setObjectName(rows[k].path);
    m_values[k]->setTextInteractionFlags(Qt::TextSelectableByMouse);
    form->addRow(rows[k].label, m_values[k]);
  }
  m_rms = new QLabel(this);
  m_rms->setObjectName(QStringLiteral("heatFit.rms"));
  form->addRow(tr("Difference, rms"), m_rms);
  form->addRow(makeNote(tr("± is the standard uncertainty of the fit alone (JCGM 100, type A). "
                           "Housing to ambient holds for the mounting that was measured."),
                        "muted"));
  return form;
}

QLayout* HeatFitDialog::makeButtons() {
  auto* line = new QHBoxLayout;
  auto* close = new QPushButton(tr("Close"), this);
  close->setAutoDefault(false);
  connect(close, &QPushButton::clicked, this, &QDialog::reject);
  m_use = new QPushButton(tr("&Use these"), this);
  m_use->setObjectName(QStringLiteral("heatFit.use"));
  m_use->setDefault(true);
  connect(m_use, &QPushButton::clicked, this, [this] {
    if (!m_fit) return;
    emit editRequested(fitEdit(*m_fit));
    accept();
  });
  line->addStretch();
  line->addWidget(close);
  line->addWidget(m_use);
  return line;
}

void HeatFitDialog::clearResult() {
  m_fit.reset();
  m_use->setEnabled(false);
  for (QLabel* value : m_values) value->setText(QStringLiteral("–"));
  m_rms->setText(QStringLiteral("–"));
  m_curve->showChart(emptyChart(tr("Winding, measured and fitted")));
  m_residual->showChart(emptyChart(tr("Measured less fitted")));
}

void HeatFitDialog::askFile() {
  const QString fileName = QFileDialog::getOpenFileName(
      this, tr("Open a measured curve"), {}, tr("Tables (*.csv *.txt *.tsv);;All files (*)"));
  if (!fileName.isEmpty()) openFile(fileName);
}

void HeatFitDialog::openFile(const QString& fileName) {
  constexpr qint64 kLargest = 20'000'000;
  QFile file(fileName);
  if (!file.open(QIODevice::ReadOnly))
    return refuse(
        {file.errorString().toStdString(), fileName.toStdString(), "choose another file"});
  if (file.size() > kLargest)
    return refuse({"the file is larger than 20 MB", fileName.toStdString(), "give fewer rows"});
  m_name = fileName.section(u'/', -1);
  m_text->setPlainText(QString::fromUtf8(file.readAll()));
}

void HeatFitDialog::readText() {
  m_message->clear();
  m_text->setExtraSelections({});
  const std::string text = m_text->toPlainText().toStdString();
  if (text.empty()) return clearResult();
  const auto ambient =
      parseQuantity(m_ambient->text().toStdString(), Quantity::Temperature, "degC");
  if (!ambient) {
    InputError error = ambient.error();
    error.where = tr("ambient").toStdString();
    return refuse(error);
  }
  auto curve = readHeatCurve(text, m_name.toStdString());
  if (!curve) return refuse(curve.error());
  curve->ambient = ambient->value;
  startFit(*std::move(curve));
}

void HeatFitDialog::startFit(HeatCurve curve) {
  if (m_running) {
    m_next = std::move(curve);
    return;
  }
  m_running = true;
  m_worker = std::jthread([this, curve = std::move(curve)] {
    auto fit = fitHeat(curve);
    QMetaObject::invokeMethod(
        this, [this, curve, fit = std::move(fit)] { finishFit(curve, fit); }, Qt::QueuedConnection);
  });
}

void HeatFitDialog::finishFit(const HeatCurve& curve,
                              const tl::expected<HeatFit, InputError>& fit) {
  m_running = false;
  if (m_next) return startFit(*std::exchange(m_next, std::nullopt));
  fit ? showFit(curve, *fit) : refuse(fit.error());
  emit fitted();
}

void HeatFitDialog::showFit(const HeatCurve& curve, const HeatFit& fit) {
  m_fit = fit;
  m_use->setEnabled(true);
  const std::vector<FittedRow> rows = fittedRows(fit);
  for (std::size_t k = 0; k < rows.size(); ++k) m_values[k]->setText(rows[k].value);
  m_rms->setText(quantityText(fit.residualRms, Quantity::TemperatureDifference, "K"));
  m_curve->showChart(fittedChart(curve, fit));
  m_residual->showChart(residualChart(curve, fit));
}

void HeatFitDialog::refuse(const InputError& error) {
  clearResult();
  m_message->setText(QString::fromStdString(describe(error)));
  static const QRegularExpression line(QStringLiteral(", line (\\d+)"));
  const auto match = line.match(QString::fromStdString(error.where));
  if (match.hasMatch()) markLine(match.captured(1).toInt());
}

void HeatFitDialog::markLine(int number) {
  QTextEdit::ExtraSelection mark;
  mark.cursor = QTextCursor(m_text->document()->findBlockByNumber(number - 1));
  mark.format.setBackground(blend(jw::palette().shortfall, jw::palette().panel, 0.25));
  mark.format.setProperty(QTextFormat::FullWidthSelection, true);
  m_text->setExtraSelections({mark});
}

void HeatFitDialog::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange && m_residual) {
    m_curve->restyle();
    m_residual->restyle();
  }
  QDialog::changeEvent(event);
}

}  // namespace jw
