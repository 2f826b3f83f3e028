#include "widgets/panels/log_motion_page.h"

#include <algorithm>

#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollArea>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/panels/log_views.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kPanelWidth = 332;
constexpr double kMilli = 1e-3;

LogSpin* makeSpin(const QString& name, const QString& objectName, const QString& suffix, double low,
                  double high, int decimals) {
  auto* spin = new LogSpin(name, objectName, low, high, decimals);
  spin->setSuffix(suffix);
  return spin;
}

QFormLayout* makeForm() {
  auto* form = new QFormLayout;
  form->setHorizontalSpacing(12);
  form->setVerticalSpacing(6);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  return form;
}

/// Whether the times are other ones, so that stretch and smoother begin anew.
bool isAnother(const MeasuredLog* before, const MeasuredLog* log) {
  if (before == nullptr || log == nullptr) return true;
  return before->rows() != log->rows() || before->time.back() != log->time.back();
}

}  // namespace

LogMotionPage::LogMotionPage(QWidget* parent) : QWidget(parent), m_canvas(new LogCanvas(this)) {
  m_canvas->setObjectName(QStringLiteral("log.motion"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(12, 12, 12, 12);
  row->setSpacing(12);
  row->addWidget(makePanel());
  row->addWidget(m_canvas, 1);
  connect(m_canvas, &LogCanvas::stretchDragged, this, [this](double from, double to) {
    setStretch(from, to);
    emit stretchChanged();
  });
}

QWidget* LogMotionPage::makePanel() {
  auto* content = new QWidget;
  auto* column = new QVBoxLayout(content);
  column->setContentsMargins(0, 0, 8, 0);
  column->setSpacing(8);
  const auto add = [&](const QString& title, QLayout* part) {
    column->addWidget(makeLogLabel(title, "title"));
    column->addLayout(part);
    column->addSpacing(8);
  };
  add(tr("Smoother"), makeSmoother());
  add(tr("Stretch"), makeStretch());
  add(tr("Closing"), makeClosing());
  add(tr("Where the ends meet"), makeJoin());
  column->addStretch(1);
  m_use = new QPushButton(tr("&Use as the cycle"));
  m_use->setObjectName(QStringLiteral("log.useCycle"));
  m_use->setToolTip(tr("Replaces the moves of the cycle by this stretch; can be undone"));
  m_use->setAutoDefault(false);
  connect(m_use, &QPushButton::clicked, this, &LogMotionPage::cycleRequested);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidget(content);
  auto* side = new QWidget(this);
  side->setFixedWidth(kPanelWidth);
  auto* whole = new QVBoxLayout(side);
  whole->setContentsMargins(0, 0, 0, 0);
  whole->addWidget(scroll, 1);
  whole->addWidget(m_use);
  return side;
}

QLayout* LogMotionPage::makeSmoother() {
  auto* column = new QVBoxLayout;
  m_smoother = makeLogLabel({}, "muted", QStringLiteral("log.smoother"));
  m_effect = makeLogLabel({}, "muted", QStringLiteral("log.effect"));
  m_window = makeSpin(tr("Window of the smoother"), QStringLiteral("log.window"), tr(" ms"), 0.001,
                      1e9, 3);
  m_reach = makeSpin(tr("Frequency up to which the acceleration reaches"),
                     QStringLiteral("log.reach"), tr(" Hz"), 1e-6, 1e6, 3);
  connect(m_window, &QDoubleSpinBox::valueChanged, this, [this](double ms) {
    if (m_showing) return;
    m_reach->blockSignals(true);
    m_reach->setValue(smootherBandwidth(ms * kMilli).acceleration);
    m_reach->blockSignals(false);
    emit windowChanged();
  });
  connect(m_reach, &QDoubleSpinBox::valueChanged, this, [this](double hertz) {
    if (!m_showing) m_window->setValue(windowOfBandwidth(hertz) / kMilli);
  });
  auto* form = makeForm();
  form->addRow(tr("&Window"), m_window);
  form->addRow(tr("&Reaches up to"), m_reach);
  column->addWidget(m_smoother);
  column->addLayout(form);
  column->addWidget(m_effect);
  return column;
}

QLayout* LogMotionPage::makeStretch() {
  auto* form = makeForm();
  const auto entry = [&](const QString& name, const char* objectName) {
    auto* field = new LogEntry(name, Quantity::Time, "s", 0, kLongestLog, this);
    field->setObjectName(QLatin1String(objectName));
    connect(field, &LogEntry::valueChanged, this, [this] {
      setStretch(m_from->value(), m_to->value());
      emit stretchChanged();
    });
    return field;
  };
  m_from = entry(tr("Stretch from"), "log.from");
  m_to = entry(tr("Stretch to"), "log.to");
  m_length = makeLogLabel({}, "muted", QStringLiteral("log.length"));
  auto* end = new QPushButton(tr("&Move the end to where it is most like the start"));
  end->setText(tr("Find a better &end"));
  end->setToolTip(
      tr("Moves the end, by a tenth of the stretch at most, to the row at which position, "
         "speed and acceleration are most like those at the start"));
  end->setObjectName(QStringLiteral("log.findEnd"));
  end->setAutoDefault(false);
  connect(end, &QPushButton::clicked, this, &LogMotionPage::findEnd);
  form->addRow(tr("Fr&om"), m_from);
  form->addRow(tr("&To"), m_to);
  form->addRow(m_length);
  form->addRow(end);
  return form;
}

QLayout* LogMotionPage::makeClosing() {
  const ClosingOptions first;
  m_closing = new LogChoice(tr("How the end is led back"), QStringLiteral("log.closing"));
  m_closing->addItems(
      {tr("left open"), tr("blended over its last part"), tr("a straight drift taken off")});
  m_closing->setCurrentIndex(int(first.closing));
  m_share =
      makeSpin(tr("Share that is blended"), QStringLiteral("log.share"), tr(" %"), 0.1, 100, 1);
  m_share->setValue(100 * first.blendShare);
  m_turns = new QCheckBox(tr("The joint turns on and on"));
  m_turns->setObjectName(QStringLiteral("log.turns"));
  m_turns->setToolTip(tr("Ends that differ by whole turns meet"));
  m_rest = new LogEntry(tr("Rest below"), Quantity::AngularSpeed, "rpm", 0, 1e6, this);
  m_rest->setObjectName(QStringLiteral("log.rest"));
  m_rest->setToolTip(tr("Smaller speeds become 0, so that noise at rest asks for no friction"));
  m_rest->setValue(first.restSpeed);
  connect(m_closing, &QComboBox::activated, this, [this] {
    m_share->setEnabled(CycleClosing(m_closing->currentIndex()) == CycleClosing::Blend);
    emit closingChanged();
  });
  connect(m_share, &QDoubleSpinBox::valueChanged, this, &LogMotionPage::closingChanged);
  connect(m_turns, &QCheckBox::toggled, this, &LogMotionPage::closingChanged);
  connect(m_rest, &LogEntry::valueChanged, this, &LogMotionPage::closingChanged);
  auto* form = makeForm();
  form->addRow(tr("The e&nd is"), m_closing);
  form->addRow(tr("Last &part"), m_share);
  form->addRow(tr("Rest &below"), m_rest);
  form->addRow(m_turns);
  return form;
}

QLayout* LogMotionPage::makeJoin() {
  auto* column = new QVBoxLayout;
  m_join = makeLogTable(tr("How far the ends are apart"), QStringLiteral("log.join"),
                        {{}, tr("Measured"), tr("Closed"), tr("Added")});
  m_join->setRowCount(3);
  const QStringList names{tr("position, °"), tr("speed, rpm"), tr("accel., rad/s²")};
  for (int r = 0; r < 3; ++r) m_join->setItem(r, 0, logCell(names[r]));
  m_join->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_join->horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  for (int c = 0; c < 4; ++c) m_join->horizontalHeader()->resizeSection(c, c == 0 ? 89 : 75);
  for (int c = 1; c < 4; ++c)
    m_join->horizontalHeaderItem(c)->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  fitHeight(*m_join);
  m_join->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_notes = makeLogLabel({}, "error", QStringLiteral("log.joinNotes"));
  column->addWidget(m_join);
  column->addWidget(m_notes);
  return column;
}

void LogMotionPage::fill(LogSettings& settings) const {
  const bool known = m_study.log != nullptr;
  settings.window = known ? m_window->value() * kMilli : kUnset;
  settings.from = known ? m_stretch.from : 0;
  settings.to = known ? m_stretch.to : INFINITY;
  settings.closing.closing = CycleClosing(m_closing->currentIndex());
  settings.closing.blendShare = m_share->value() / 100;
  settings.closing.wholeTurns = m_turns->isChecked();
  settings.closing.restSpeed = m_rest->value();
}

void LogMotionPage::showStudy(const LogStudy& study, LogStage stage) {
  const bool another = isAnother(m_study.log.get(), study.log.get());
  m_kept = !another;
  m_study = study;
  if (!study.log) return m_canvas->showView({}, false);
  m_showing = true;
  if (another) showLog(*study.log);
  if (stage == LogStage::Rows || stage == LogStage::Motion) {
    m_canvas->showView(motionView(study), !another);
    showSmoother(study);
  }
  showJoin(study.join.get());
  m_showing = false;
}

void LogMotionPage::showLog(const MeasuredLog& log) {
  m_window->setRange(4 * log.medianStep / kMilli, log.time.back() / kMilli);
  m_window->setValue(firstLogWindow(log) / kMilli);
  m_reach->setValue(smootherBandwidth(firstLogWindow(log)).acceleration);
  setStretch(0, log.time.back());
}

void LogMotionPage::showSmoother(const LogStudy& study) {
  if (!study.curves) return;
  const LogMotion& motion = study.curves->motion;
  m_smoother->setText(upperFirst(toQString(motion.smoother)));
  m_effect->setText(smoothingEffect(motion));
  m_window->setEnabled(motion.window > 0);
  m_reach->setEnabled(motion.window > 0);
}

void LogMotionPage::setStretch(double from, double to) {
  const double length = m_study.log ? m_study.log->time.back() : 0;
  m_stretch.from = std::clamp(from, 0.0, length);
  m_stretch.to = std::clamp(to, m_stretch.from, length);
  m_from->setValue(m_stretch.from);
  m_to->setValue(m_stretch.to);
  m_canvas->setStretch(m_stretch);
  if (!m_study.log) return;
  const auto& time = m_study.log->time;
  const auto rows = std::upper_bound(time.begin(), time.end(), m_stretch.to) -
                    std::lower_bound(time.begin(), time.end(), m_stretch.from);
  m_length->setText(tr("%1 rows, %2")
                        .arg(fixedNumber(double(rows), 0),
                             quantityText(m_stretch.to - m_stretch.from, Quantity::Time, "s", 5)));
}

void LogMotionPage::findEnd() {
  if (!m_study.curves) return;
  const double reach = 0.1 * (m_stretch.to - m_stretch.from);
  const double to =
      closingEnd(*m_study.log, m_study.curves->motion, m_stretch.from, m_stretch.to, reach);
  setStretch(m_stretch.from, to);
  emit stretchChanged();
}

void LogMotionPage::showJoin(const LogJoinResult* join) {
  const bool good = join != nullptr && join->has_value();
  const MotionState none{kUnset, kUnset, kUnset};
  int column = 1;
  for (const MotionState& state : {good ? (*join)->mismatch : none, good ? (*join)->left : none,
                                   good ? (*join)->largestMend : none}) {
    const QStringList texts = stateTexts(state);
    for (int r = 0; r < 3; ++r) m_join->setItem(r, column, logCell(good ? texts[r] : "–", true));
    ++column;
  }
  QStringList notes;
  if (good)
    for (const InputError& note : (*join)->notes) notes << toQString(describe(note));
  if (join != nullptr && !good) notes << toQString(describe(join->error()));
  m_notes->setText(notes.join(u'\n'));
  m_use->setEnabled(good);
}

}  // namespace jw
