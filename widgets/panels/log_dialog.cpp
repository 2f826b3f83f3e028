#include "widgets/panels/log_dialog.h"

#include <algorithm>

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QScreen>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/panels/log_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kPause = 80;  // [ms] in which changes that follow one another become one
constexpr int kTick = 40;   // [ms] between looks at the progress

}  // namespace

Edit measuredCycleEdit(const ClosedCycle& cycle, const QString& name) {
  Segment segment = cycle.segment;
  segment.name = name.toStdString();
  return {QStringLiteral("Use measured cycle"),
          {},
          [segment = std::move(segment),
           start = cycle.startAngle](Project& project) -> tl::expected<void, InputError> {
            project.cycle.segments = {segment};
            project.cycle.startAngle = start;
            project.cycle.asWritten.typed.erase("startAngle");
            return {};
          }};
}

LogDialog::LogDialog(QWidget* parent) : QDialog(parent) {
  setObjectName(QStringLiteral("measuredLog"));
  setWindowTitle(tr("Measured log"));
  setWindowFlag(Qt::WindowMaximizeButtonHint);
  m_columns = new LogColumnsPage(this);
  m_motion = new LogMotionPage(this);
  m_load = new LogLoadPage(this);
  m_pages = new QTabWidget(this);
  m_pages->setObjectName(QStringLiteral("log.pages"));
  m_pages->setDocumentMode(true);
  m_pages->addTab(m_columns, tr("Columns"));
  m_pages->addTab(m_motion, tr("Motion and cycle"));
  m_pages->addTab(m_load, tr("Torque and load"));
  m_message = makeLogLabel({}, "error", QStringLiteral("log.message"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 12, 16, 12);
  column->setSpacing(8);
  column->addLayout(makeHead());
  column->addWidget(m_message);
  column->addWidget(m_pages, 1);
  column->addWidget(makeFoot());
  connectPages();
  showHead();
  showBusy(false);
  const QSize room = parent != nullptr ? parent->size() : QSize(1280, 800);
  resize(std::max(1120, room.width() * 92 / 100), std::max(700, room.height() * 92 / 100));
}

QLayout* LogDialog::makeHead() {
  m_head = makeLogLabel({}, "title", QStringLiteral("log.head"));
  auto* open = new QPushButton(tr("&Open another…"), this);
  open->setObjectName(QStringLiteral("log.open"));
  open->setAutoDefault(false);
  connect(open, &QPushButton::clicked, this, &LogDialog::askFile);
  auto* row = new QHBoxLayout;
  row->addWidget(m_head, 1);
  row->addWidget(open);
  return row;
}

QWidget* LogDialog::makeFoot() {
  auto* foot = new QWidget(this);
  auto* row = new QHBoxLayout(foot);
  row->setContentsMargins(0, 0, 0, 0);
  m_busyPart = new QWidget(foot);
  auto* busy = new QHBoxLayout(m_busyPart);
  busy->setContentsMargins(0, 0, 0, 0);
  m_busyText = makeLogLabel({}, "muted", QStringLiteral("log.busy"));
  m_busyText->setWordWrap(false);
  m_busyText->setMinimumWidth(150);
  m_progress = new QProgressBar(foot);
  m_progress->setAccessibleName(tr("Progress"));
  m_progress->setRange(0, 1000);
  m_progress->setTextVisible(false);
  m_progress->setFixedSize(200, 6);
  auto* stop = new QPushButton(tr("&Stop"), foot);
  stop->setObjectName(QStringLiteral("log.stop"));
  stop->setAutoDefault(false);
  connect(stop, &QPushButton::clicked, this, [this] {
    m_work.stop();
    showMessage({"stopped", "", "what was finished before is shown"});
    emit settled();
  });
  for (QWidget* part : std::initializer_list<QWidget*>{m_busyText, m_progress, stop})
    busy->addWidget(part);
  auto* close = new QPushButton(tr("&Close"), foot);
  close->setAutoDefault(false);
  connect(close, &QPushButton::clicked, this, &QDialog::reject);
  row->addWidget(m_busyPart);
  row->addStretch(1);
  row->addWidget(close);
  foot->setMinimumHeight(close->sizeHint().height());
  return foot;
}

void LogDialog::connectPages() {
  m_pause.setSingleShot(true);
  connect(&m_pause, &QTimer::timeout, this,
          [this] { request(std::exchange(m_next, LogStage::Done)); });
  connect(&m_tick, &QTimer::timeout, this, &LogDialog::showProgress);
  connect(&m_work, &LogWork::busyChanged, this, &LogDialog::showBusy);
  connect(&m_work, &LogWork::advanced, this, &LogDialog::advanced);
  connect(&m_work, &LogWork::failed, this, &LogDialog::refuse);
  connect(&m_work, &LogWork::cycleReady, this, &LogDialog::takeCycle);
  connect(m_columns, &LogColumnsPage::layoutChanged, this, [this](const LogLayout& layout) {
    m_layout = layout;
    m_columnsChosen = false;
    requestSoon(LogStage::Columns);
  });
  connect(m_columns, &LogColumnsPage::refused, this, &LogDialog::showMessage);
  connect(m_columns, &LogColumnsPage::columnsChanged, this, [this] {
    m_columnsChosen = true;
    requestSoon(LogStage::Columns);
  });
  const auto on = [this](LogStage stage) { return [this, stage] { requestSoon(stage); }; };
  connect(m_columns, &LogColumnsPage::readingChanged, this, on(LogStage::Rows));
  connect(m_motion, &LogMotionPage::windowChanged, this, on(LogStage::Motion));
  connect(m_motion, &LogMotionPage::stretchChanged, this, on(LogStage::Join));
  connect(m_motion, &LogMotionPage::closingChanged, this, on(LogStage::Join));
  connect(m_motion, &LogMotionPage::cycleRequested, this,
          [this] { m_work.requestCycle(settings()); });
  connect(m_load, &LogLoadPage::driveChanged, this, on(LogStage::Torque));
  connect(m_load, &LogLoadPage::termsChanged, this, on(LogStage::Fit));
  connect(m_load, &LogLoadPage::editRequested, this, &LogDialog::editRequested);
}

void LogDialog::askFile() {
  const QString fileName = QFileDialog::getOpenFileName(
      this, tr("Open a measured log"), QFileInfo(m_fileName).absolutePath(), tr(kLogFilter));
  if (!fileName.isEmpty()) openFile(fileName);
}

void LogDialog::openFile(const QString& fileName) {
  m_fileName = fileName;
  m_layout.reset();
  m_columnsChosen = false;
  m_keepMotion = false;
  request(LogStage::Text);
}

LogSettings LogDialog::settings() const {
  LogSettings settings;
  settings.fileName = m_fileName;
  settings.layout = m_layout;
  if (m_columnsChosen) settings.columns = m_columns->columns();
  settings.reading = m_columns->reading();
  if (m_keepMotion) m_motion->fill(settings);
  m_load->fill(settings);
  return settings;
}

void LogDialog::request(LogStage from) {
  if (from == LogStage::Done || m_fileName.isEmpty()) return;
  m_pause.stop();
  m_next = LogStage::Done;
  if (from <= LogStage::Rows) {
    m_message->clear();
    m_message->hide();
    m_keepMotion = false;
  }
  m_work.request(from, settings());
}

void LogDialog::requestSoon(LogStage from) {
  m_next = std::min(m_next, from);
  if (!m_pause.isActive()) m_pause.start(kPause);
}

void LogDialog::advanced(LogStage stage) {
  const LogStudy& study = m_work.study();
  if (stage == LogStage::Columns && !m_columnsChosen) m_columns->showColumns(study);
  if (stage == LogStage::Rows) m_columns->holdText(study);
  if (stage == LogStage::Rows) m_columns->showMends(study.log.get());
  if (stage < LogStage::Rows) return showHead();
  m_motion->showStudy(study, stage);
  m_load->showStudy(study, stage);
  if (stage != LogStage::Rows) return;
  m_keepMotion = true;
  showHead();
  if (m_motion->kept()) requestSoon(LogStage::Motion);
}

void LogDialog::refuse(LogStage stage, const InputError& error) {
  const LogStudy& study = m_work.study();
  if (stage <= LogStage::Columns) m_columns->showColumns(study);
  m_columns->showMends(study.log.get());
  m_motion->showStudy(study, stage);
  m_load->showStudy(study, stage);
  m_pages->setCurrentWidget(m_columns);
  showHead();
  showMessage(error);
  emit settled();
}

void LogDialog::showMessage(const InputError& error) {
  m_message->setText(toQString(describe(error)));
  m_message->show();
}

void LogDialog::showHead() {
  const LogStudy& study = m_work.study();
  const QString name = QFileInfo(m_fileName).fileName();
  if (!study.log) {
    m_head->setText(name.isEmpty() ? tr("No log yet") : name);
  } else {
    m_head->setText(tr("%1  ·  %2 rows  ·  %3  ·  a row every %4")
                        .arg(name, fixedNumber(double(study.log->rows()), 0),
                             quantityText(study.log->time.back(), Quantity::Time, "s", 5),
                             quantityText(study.log->medianStep, Quantity::Time, "ms", 4)));
  }
  const bool read = study.log != nullptr;
  m_pages->setTabEnabled(1, read);
  m_pages->setTabEnabled(2, read);
  m_message->setVisible(!m_message->text().isEmpty());
}

void LogDialog::showBusy(bool busy) {
  busy ? m_tick.start(kTick) : m_tick.stop();
  m_busyPart->setVisible(busy);
  if (busy) return showProgress();
  m_motion->setUsable(m_work.study().join && m_work.study().join->has_value());
  emit settled();
}

void LogDialog::showProgress() {
  const double share = m_work.share();
  m_busyText->setText(nameOf(m_work.stage()) + u'…');
  m_progress->setRange(0, share > 0 ? 1000 : 0);
  m_progress->setValue(int(1000 * share));
}

void LogDialog::showSnapshot(const Snapshot& snapshot) {
  if (m_load->showProject(snapshot) && m_work.study().log) requestSoon(LogStage::Torque);
}

void LogDialog::takeCycle(const std::shared_ptr<const LogJoinResult>& cycle) {
  if (!*cycle) return showMessage(cycle->error());
  emit editRequested(measuredCycleEdit(**cycle, QFileInfo(m_fileName).completeBaseName()));
}

}  // namespace jw
