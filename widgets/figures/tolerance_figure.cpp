#include "widgets/figures/tolerance_figure.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "core/model/band.h"
#include "widgets/figures/picture_choice.h"
#include "widgets/inputs/choice_box.h"
#include "widgets/inputs/elided_label.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr std::array<int, 4> kDraws{1'000, 3'000, 10'000, 100'000};
constexpr int kUsualDraws = 2;  // of kDraws

QString noBandHtml() {
  return ToleranceFigure::tr(
      "<p>No input has a tolerance yet.</p><p>Press ± in a number of the inputs, or choose "
      "<i>Tolerance band</i> in its menu, and type how far it may be off: ± 5 %.</p>");
}

/// Draws on the thread of the study: the bands of the envelope first, they are there at once.
void drawAll(const Project& project, const ToleranceRequest& request, const StudyRun& run,
             const std::function<void(std::shared_ptr<const ToleranceEnvelope>)>& showBands,
             const std::function<void(std::shared_ptr<const Tolerance>, bool)>& showDraws) {
  const ToleranceEnvelopeRequest envelope{300, request.seed};
  if (auto bands = toleranceEnvelope(project, envelope, {run.stop, {}, run.threads});
      bands && !bands->stopped)
    showBands(std::make_shared<const ToleranceEnvelope>(*std::move(bands)));
  ToleranceRequest asked = request;
  asked.partial = [&](const Tolerance& part) {
    showDraws(std::make_shared<const Tolerance>(part), false);
  };
  if (auto all = tolerance(project, asked, run); all && !all->stopped)
    showDraws(std::make_shared<const Tolerance>(*std::move(all)), true);
}

}  // namespace

ToleranceFigure::ToleranceFigure(QWidget* parent)
    : Figure(parent),
      m_chances(new ChanceTable),
      m_distribution(new LineChartCanvas),
      m_tornado(new TornadoCanvas),
      m_envelope(new EnvelopeCanvas) {
  setObjectName(QStringLiteral("figure.tolerance"));
  setAccessibleName(tr("Tolerance"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  m_body = new QWidget(this);
  QSizePolicy policy = m_body->sizePolicy();
  policy.setRetainSizeWhenHidden(true);  // the choice above stays at the top
  m_body->setSizePolicy(policy);
  auto* inner = new QVBoxLayout(m_body);
  inner->setContentsMargins(0, 0, 0, 0);
  inner->setSpacing(4);
  inner->addWidget(makeControls());
  inner->addWidget(makePages(), 1);
  column->addWidget(m_body, 1);
  connect(m_distribution, &LineChartCanvas::hovered, m_reading, &QLabel::setText);
  connect(m_envelope, &EnvelopeCanvas::hovered, m_reading, &QLabel::setText);
  connect(m_chances, &ChanceTable::rowChosen, this, [this](int row) {
    const ChanceRow& chosen = m_chances->view().rows[std::size_t(row)];
    chooseVerdict(chosen.id, chosen.stage);
  });
  connect(m_chances, &ChanceTable::rowOpened, this, [this] { setPicture(Picture::Distribution); });
  connect(&m_study, &StudyThread::busyChanged, this, [this](bool busy) {
    m_run->setText(busy ? tr("Cancel") : tr("Draw again"));
    if (!busy) showResult();
  });
  connect(&m_study, &StudyThread::failed, m_status, &QLabel::setText);
}

QWidget* ToleranceFigure::makeHeader() {
  PictureChoice choice =
      makePictureChoice({{tr("chances"), QStringLiteral("tolerance.picture.chances")},
                         {tr("distribution"), QStringLiteral("tolerance.picture.distribution")},
                         {tr("what matters"), QStringLiteral("tolerance.picture.tornado")},
                         {tr("envelope"), QStringLiteral("tolerance.picture.envelope")}},
                        QStringLiteral("tolerance.reading"), this);
  for (std::size_t i = 0; i < m_choice.size(); ++i) {
    m_choice[i] = choice.buttons[i];
    connect(m_choice[i], &QToolButton::clicked, this, [this, i] { setPicture(Picture(i)); });
  }
  m_reading = choice.reading;
  return choice.header;
}

QWidget* ToleranceFigure::makeControls() {
  auto* controls = new QWidget(this);
  auto* line = new QHBoxLayout(controls);
  line->setContentsMargins(12, 2, 12, 0);
  line->setSpacing(8);
  m_draws = new ChoiceBox(controls);
  m_draws->setObjectName(QStringLiteral("tolerance.draws"));
  m_draws->setAccessibleName(tr("Draws"));
  for (const int draws : kDraws) m_draws->addItem(tr("%1 draws").arg(fixedNumber(draws, 0)), draws);
  m_draws->setCurrentIndex(kUsualDraws);
  m_seed = new QSpinBox(controls);
  m_seed->setObjectName(QStringLiteral("tolerance.seed"));
  m_seed->setAccessibleName(tr("Seed"));
  m_seed->setToolTip(tr("The same seed draws the same values again"));
  m_seed->setPrefix(tr("seed "));
  m_seed->setRange(1, 9999);
  m_status = new ElidedLabel(controls);
  m_status->setObjectName(QStringLiteral("tolerance.status"));
  m_status->setProperty("role", "muted");
  m_status->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_run = new QToolButton(controls);
  m_run->setObjectName(QStringLiteral("tolerance.run"));
  m_run->setText(tr("Draw again"));
  line->addWidget(m_draws);
  line->addWidget(m_seed);
  line->addWidget(m_status, 1);
  line->addWidget(m_run);
  connect(m_draws, &QComboBox::activated, this, &ToleranceFigure::start);
  connect(m_seed, &QSpinBox::valueChanged, this, &ToleranceFigure::start);
  connect(m_run, &QToolButton::clicked, this, [this] { m_study.isBusy() ? stop() : start(); });
  return controls;
}

QWidget* ToleranceFigure::makePages() {
  auto* pages = new QWidget(this);
  auto* column = new QVBoxLayout(pages);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  m_which = new ChoiceBox(pages);
  m_which->setObjectName(QStringLiteral("tolerance.verdict"));
  m_which->setAccessibleName(tr("Verdict"));
  m_which->setMinimumWidth(280);
  m_which->hide();
  connect(m_which, &QComboBox::activated, this, [this](int row) {
    const ChanceRow& chosen = m_chances->view().rows[std::size_t(row)];
    chooseVerdict(chosen.id, chosen.stage);
  });
  auto* choice = new QHBoxLayout;
  choice->setContentsMargins(12, 0, 12, 0);
  choice->addWidget(m_which);
  choice->addStretch(1);
  column->addLayout(choice);
  m_pages = new QStackedWidget(pages);
  m_pages->addWidget(m_chances);
  m_pages->addWidget(m_distribution);
  m_pages->addWidget(m_tornado);
  m_pages->addWidget(m_envelope);
  column->addWidget(m_pages, 1);
  return pages;
}

QString ToleranceFigure::exportName() const {
  switch (m_picture) {
    case Picture::Chances: break;
    case Picture::Distribution: return QStringLiteral("distribution");
    case Picture::Tornado: return QStringLiteral("tornado");
    case Picture::Envelope: return QStringLiteral("envelopeband");
  }
  return figureName();
}

void ToleranceFigure::addStudies(Snapshot& snapshot) const {
  if (!m_result || m_resultOf != snapshot.evaluatedProject) return;
  snapshot.tolerance = m_result;
  snapshot.toleranceEnvelope = m_bands;
}

void ToleranceFigure::setPicture(Picture picture) {
  m_picture = picture;
  m_choice[std::size_t(picture)]->setChecked(true);
  m_pages->setCurrentIndex(int(picture));
  m_which->setVisible(picture == Picture::Distribution || picture == Picture::Tornado);
  m_reading->clear();
}

bool ToleranceFigure::isStale() const {
  return m_snapshot.stale || m_resultOf != m_snapshot.evaluatedProject;
}

void ToleranceFigure::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  const bool known = snapshot.evaluatedProject && snapshot.evaluation;
  const bool banded = known && !bandedFields(*snapshot.evaluatedProject).empty();
  keepSnapshotWithNotice(snapshot, known && !banded ? noBandHtml() : QString());
  m_body->setVisible(banded);
  if (!banded) {
    stop();
    m_result.reset();
    m_bands.reset();
    m_resultOf.reset();
    m_of.reset();
    return;
  }
  if (m_of != snapshot.evaluatedProject && !snapshot.stale) start();
  showResult();
}

void ToleranceFigure::start() {
  if (!m_snapshot.evaluatedProject) return;
  m_of = m_snapshot.evaluatedProject;
  ToleranceRequest request;
  request.draws = std::size_t(m_draws->currentData().toInt());
  request.seed = std::uint64_t(m_seed->value());
  m_study.request([this, project = m_of, request](const StudyContext& study) {
    StudyRun run;
    run.stop = study.stop;
    run.progress = [&](const StudyProgress& progress) {
      study.post([this, progress] { showProgress(progress); });
    };
    drawAll(
        *project, request, run,
        [&](std::shared_ptr<const ToleranceEnvelope> bands) {
          study.post([this, bands = std::move(bands)] { receiveEnvelope(bands); });
        },
        [&](std::shared_ptr<const Tolerance> part, bool last) {
          study.post([this, part = std::move(part), last] { receive(part, last); });
        });
  });
}

void ToleranceFigure::stop() {
  if (!m_study.isBusy()) return;
  m_study.stop();
  m_status->setText(m_result
                        ? tr("given up after %1 draws").arg(fixedNumber(double(m_result->draws), 0))
                        : tr("given up"));
}

void ToleranceFigure::receive(std::shared_ptr<const Tolerance> result, bool last) {
  m_result = std::move(result);
  m_resultOf = m_of;
  if (last) m_status->clear();
  showResult();
}

void ToleranceFigure::receiveEnvelope(std::shared_ptr<const ToleranceEnvelope> bands) {
  m_bands = std::move(bands);
  showResult();
}

void ToleranceFigure::showProgress(const StudyProgress& progress) {
  QString text =
      tr("%1 of %2")
          .arg(fixedNumber(double(progress.done), 0), fixedNumber(double(progress.total), 0));
  if (std::isfinite(progress.secondsLeft) && progress.secondsLeft > 0.1)
    text += tr(" · %1 left").arg(durationText(progress.secondsLeft));
  m_status->setText(text);
}

void ToleranceFigure::showResult() {
  if (!m_result) return;
  m_chances->showView(toleranceView(*m_result), isStale());
  fillChoice();
  showChosen();
  const bool drawn = m_bands && m_snapshot.evaluation;
  if (drawn) {
    EnvelopeView view = bandedEnvelopeView(m_snapshot, *m_bands);
    view.stale = isStale();
    m_envelope->showView(std::move(view), false);
  }
  const ChanceRow& all = m_chances->view().rows.front();
  setAccessibleDescription(
      tr("All checks hold in %1 % of the draws").arg(numberText(100 * all.holds.share, 3)));
}

void ToleranceFigure::fillChoice() {
  const auto& rows = m_chances->view().rows;
  const QSignalBlocker quiet(m_which);
  m_which->clear();
  for (const ChanceRow& row : rows) m_which->addItem(row.title);
  for (std::size_t k = 0; k < rows.size(); ++k)
    if (rows[k].id == m_verdict && rows[k].stage == m_verdictStage)
      m_which->setCurrentIndex(int(k));
  m_chances->choose(m_verdict, m_verdictStage);
}

void ToleranceFigure::chooseVerdict(const std::string& id, int stage) {
  m_verdict = id;
  m_verdictStage = stage;
  fillChoice();
  m_distribution->resetZoom();
  showChosen();
}

void ToleranceFigure::showChosen() {
  const MarginSpread& margin = marginOf(*m_result, m_verdict, m_verdictStage);
  m_distribution->showChart(distributionChart(*m_result, margin), isStale());
  m_tornado->showView(tornadoView(*m_result, margin), isStale());
}

void ToleranceFigure::restyle() {
  m_distribution->restyle();
  m_envelope->restyle();
  m_chances->viewport()->update();
  m_tornado->update();
}

void ToleranceFigure::zoomBy(double factor) {
  if (m_picture == Picture::Distribution) m_distribution->zoomBy(factor);
  if (m_picture == Picture::Envelope) m_envelope->zoomBy(factor);
}

void ToleranceFigure::resetZoom() {
  m_distribution->resetZoom();
  m_envelope->resetZoom();
}

}  // namespace jw
