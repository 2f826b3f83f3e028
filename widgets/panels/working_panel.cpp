#include "widgets/panels/working_panel.h"

#include <algorithm>
#include <cmath>

#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QMenu>
#include <QScrollBar>
#include <QVBoxLayout>

#include "widgets/figures/missing_text.h"
#include "widgets/panels/acceptance_bar.h"
#include "widgets/panels/figure_menu.h"
#include "widgets/panels/remedy_section.h"
#include "widgets/panels/slope_text.h"
#include "widgets/panels/working_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

const Check* findCheck(const Evaluation& evaluation, const QString& id, int stage) {
  const std::string wanted = id.toStdString();
  const auto found =
      std::find_if(evaluation.checks.begin(), evaluation.checks.end(),
                   [&](const Check& c) { return c.id == wanted && c.stage == stage; });
  return found == evaluation.checks.end() ? nullptr : &*found;
}

QString lowerFirst(QString text) {
  if (text.size() > 1 && text[1].isLower()) text[0] = text[0].toLower();
  return text;
}

// What an open check waits for, as links.
QString openHtml(const Check& check, const Project& project, const Palette& p) {
  QStringList links;
  for (const std::string& path : check.missing)
    links << QStringLiteral("<a href='field:%1' style='color:%2; text-decoration:none'>%3</a>")
                 .arg(QString::fromStdString(path).toHtmlEscaped(), p.accent.name(),
                      fieldLabel(project, path).toLower().toHtmlEscaped());
  return QStringLiteral("<p style='margin-top:0px; color:%1'>Needs %2</p>")
      .arg(p.muted.name(), links.join(QStringLiteral(", ")));
}

}  // namespace

WorkingPanel::WorkingPanel(QWidget* parent)
    : QWidget(parent),
      m_title(new QLabel(this)),
      m_text(new QTextBrowser(this)),
      m_copy(makeCopyButton()),
      m_figures(new FigureMenu(this)),
      m_acceptance(new AcceptanceBar(this)),
      m_remedies(new RemedySection(this)) {
  setObjectName(QStringLiteral("working"));
  m_title->setProperty("role", "title");
  m_title->setWordWrap(true);
  m_title->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_text->setObjectName(QStringLiteral("working.text"));
  m_text->setAccessibleName(tr("Working"));
  m_text->setOpenLinks(false);
  m_text->document()->setDocumentMargin(0);
  m_text->setFrameShape(QFrame::NoFrame);
  auto* header = new QHBoxLayout;
  header->setContentsMargins(14, 10, 10, 6);
  header->addWidget(m_title, 1);
  header->addWidget(makeFiguresButton());
  header->addWidget(m_copy);
  auto* body = new QVBoxLayout;
  body->setContentsMargins(14, 0, 10, 8);
  body->addWidget(m_text);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(1, 1, 1, 1);
  column->setSpacing(0);
  column->addLayout(header);
  column->addLayout(body, 1);
  column->addWidget(m_acceptance);
  connect(m_acceptance, &AcceptanceBar::editRequested, this, &WorkingPanel::editRequested);
  connect(m_text, &QTextBrowser::anchorClicked, this, &WorkingPanel::follow);
  connect(m_remedies, &RemedySection::changed, this, &WorkingPanel::fill);
  connect(m_remedies, &RemedySection::editRequested, this, &WorkingPanel::editRequested);
  showNothing();
}

QToolButton* WorkingPanel::makeCopyButton() {
  auto* button = new QToolButton(this);
  button->setObjectName(QStringLiteral("working.copy"));
  button->setProperty("role", "link");
  button->setText(tr("copy"));
  button->setAccessibleName(tr("Copy the working"));
  auto* menu = new QMenu(button);
  menu->addAction(tr("Copy as &text"), this,
                  [this] { QApplication::clipboard()->setText(designName() + m_plain); });
  menu->addAction(tr("Copy as &Markdown"), this,
                  [this] { QApplication::clipboard()->setText(designName() + m_markdown); });
  button->setMenu(menu);
  button->setPopupMode(QToolButton::InstantPopup);
  return button;
}

void WorkingPanel::follow(const QUrl& link) {
  if (!m_remedies->follow(link.toString())) emit fieldRequested(fieldOfLink(link.toString()));
}

QToolButton* WorkingPanel::makeFiguresButton() {
  auto* button = new QToolButton(this);
  button->setObjectName(QStringLiteral("working.figures"));
  button->setProperty("role", "link");
  button->setText(tr("figures"));
  button->setAccessibleName(tr("Working of a headline figure"));
  button->setToolTip(tr("Headline figures of the design, each with its working"));
  button->setMenu(m_figures);
  button->setPopupMode(QToolButton::InstantPopup);
  connect(m_figures, &QMenu::aboutToShow, this,
          [this] { m_figures->showFigures(m_snapshot.evaluation.get()); });
  connect(m_figures, &FigureMenu::figureChosen, this, &WorkingPanel::showFigure);
  return button;
}

void WorkingPanel::showNothing() {
  m_remedies->showCheck(m_snapshot, nullptr);
  m_plain.clear();
  m_markdown.clear();
  m_title->setText(tr("Working"));
  m_copy->setEnabled(false);
  m_acceptance->showCheck(nullptr, false);
  m_text->setHtml(
      QStringLiteral("<p style='color:%1'>%2</p>")
          .arg(jw::palette().muted.name(), tr("Choose a verdict to see how it came about.")));
}

/// A line's room is kept while the answer is not there yet.
QString WorkingPanel::slopesHtml(const Check& check) const {
  const Palette& p = jw::palette();
  if (check.state == CheckState::Open || !std::isfinite(check.margin)) return {};
  const auto& slopes = m_snapshot.sensitivities;
  const MarginSlopes* known = slopes ? slopes->of(check.id, check.stage) : nullptr;
  const QString words = known    ? dependsHtml(*slopes, *known, *m_snapshot.evaluatedProject, p)
                        : slopes ? QString()
                                 : tr("Depends most on …");
  return QStringLiteral("<p style='margin-top:0px; margin-bottom:7px; color:%1'>%2</p>")
      .arg(p.muted.name(), words);
}

/// What goes before a working that is copied: "Orchard arm, variant A", and an empty line.
QString WorkingPanel::designName() const {
  if (!m_snapshot.evaluatedProject) return {};
  const Project& project = *m_snapshot.evaluatedProject;
  const QString variant = tr("variant %1").arg(QString::fromStdString(project.active().name));
  const QString title = QString::fromStdString(project.title);
  return (title.isEmpty() ? variant : title + QStringLiteral(", ") + variant) +
         QStringLiteral("\n\n");
}

void WorkingPanel::fill() {
  const Evaluation* evaluation = m_snapshot.evaluation.get();
  if (evaluation && m_snapshot.evaluatedProject && !m_figure.isEmpty()) return fillFigure();
  const Check* check = evaluation ? findCheck(*evaluation, m_id, m_stage) : nullptr;
  if (!check || !m_snapshot.evaluatedProject) return showNothing();
  const Project& project = *m_snapshot.evaluatedProject;
  const Working working = explain(project, *evaluation, *check);
  m_plain = workingPlain(*check, working);
  m_markdown = workingMarkdown(*check, working);
  m_copy->setEnabled(true);
  m_acceptance->showCheck(check, m_snapshot.stale);
  m_title->setText(tr("Working · %1").arg(lowerFirst(QString::fromStdString(check->title))));
  m_remedies->showCheck(m_snapshot, check);
  const bool open = check->state == CheckState::Open;
  QString html = workingHtml(*check, working, jw::palette()) + slopesHtml(*check) +
                 m_remedies->html(jw::palette());
  if (open) html.prepend(openHtml(*check, project, jw::palette()));
  setHtml(html);
}

/// Keeps the place that was scrolled to.
void WorkingPanel::setHtml(const QString& html) {
  const int scrolled = m_text->verticalScrollBar()->value();
  // A scroll bar that goes and comes back would have the text laid out twice.
  if (m_text->verticalScrollBar()->isVisible())
    m_text->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  m_text->setHtml(html);
  m_text->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
  m_text->verticalScrollBar()->setValue(scrolled);
}

void WorkingPanel::fillFigure() {
  const Evaluation& evaluation = *m_snapshot.evaluation;
  for (const NamedQuantity& figure : evaluation.quantities) {
    if (figure.id != m_figure.toStdString()) continue;
    const QString label = QString::fromUtf8(figure.label.data(), qsizetype(figure.label.size()));
    const Working working = explainQuantity(*m_snapshot.evaluatedProject, evaluation, figure.id);
    m_plain = figurePlain(label, working);
    m_markdown = figureMarkdown(label, working);
    m_copy->setEnabled(true);
    m_acceptance->showCheck(nullptr, false);
    m_remedies->showCheck(m_snapshot, nullptr);
    m_title->setText(tr("Working · %1").arg(lowerFirst(label)));
    setHtml(figureHtml(working, jw::palette()));
  }
}

void WorkingPanel::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  fill();
}

void WorkingPanel::showCheck(const Snapshot& snapshot, const QString& id, int stage) {
  m_id = id;
  m_stage = stage;
  m_figure.clear();
  showSnapshot(snapshot);
}

void WorkingPanel::showFigure(const QString& id) {
  m_figure = id;
  fill();
}

void WorkingPanel::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) fill();
  QWidget::changeEvent(event);
}

}  // namespace jw
