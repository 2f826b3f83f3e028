#include "widgets/panels/remedy_section.h"

#include "widgets/panels/catalogue_files.h"

namespace jw {
namespace {

constexpr int kRestMs = 200;  // a hand on a slider or key is to be through

bool needsRemedy(const Check& check) {
  return check.state == CheckState::Short || check.state == CheckState::Close;
}

Edit remedyEdit(const Remedy& remedy) {
  return {RemedySection::tr("Apply remedy: %1").arg(QString::fromStdString(remedy.label)),
          {},
          [remedy](Project& project) { return applyRemedy(project, remedy); }};
}

QString line(const QString& words, const char* link, const QString& linked, const Palette& p) {
  return QStringLiteral(
             "<p style='margin-top:6px; margin-bottom:2px; color:%1'>%2 "
             "<a href='%3' style='color:%4; text-decoration:none'>%5</a></p>")
      .arg(p.muted.name(), words, QLatin1String(link), p.accent.name(), linked);
}

}  // namespace

RemedySection::RemedySection(QObject* parent) : QObject(parent) {
  m_rest.setSingleShot(true);
  m_rest.setInterval(kRestMs);
  connect(&m_rest, &QTimer::timeout, this, &RemedySection::search);
  connect(&m_thread, &StudyThread::failed, this, [this] {
    giveUp(State::Cancelled);
    emit changed();
  });
}

void RemedySection::showCheck(const Snapshot& snapshot, const Check* check) {
  m_stale = snapshot.stale;
  if (!check || !needsRemedy(*check)) {
    m_project.reset();
    return giveUp(State::None);
  }
  const bool same =
      m_project == snapshot.evaluatedProject && m_id == check->id && m_stage == check->stage;
  if (!same) {
    giveUp(State::None);
    m_project = snapshot.evaluatedProject;
    m_id = check->id;
    m_stage = check->stage;
    m_folds = {};
  }
  if (m_stale && m_state == State::Waiting) giveUp(State::None);
  if (m_stale || m_state != State::None) return;
  m_state = State::Waiting;
  m_rest.start();
}

void RemedySection::giveUp(State state) {
  m_rest.stop();
  m_thread.stop();
  m_found.reset();
  m_state = state;
}

void RemedySection::search() {
  RemedyRequest request;
  request.check = m_id;
  request.stage = m_stage;
  m_thread.request(
      [this, project = m_project, request,
       catalogue = catalogueInUse(CatalogueKind::Motors)](const StudyContext& context) mutable {
        request.motors = catalogue->motors;
        auto found =
            std::make_shared<const Remedies>(remedies(*project, request, {context.stop, {}, 0}));
        if (!found->stopped) context.post([this, found] { receive(found); });
      });
}

void RemedySection::receive(std::shared_ptr<const Remedies> found) {
  m_found = std::move(found);
  m_state = State::Found;
  emit changed();
}

const CheckRemedies* RemedySection::found() const {
  return m_found ? m_found->of(m_id, m_stage) : nullptr;
}

QString RemedySection::html(const Palette& palette) const {
  if (m_state == State::Waiting)
    return line(tr("Searching for what would make it hold…"), kCancelLink, tr("cancel"), palette);
  if (m_state == State::Cancelled)
    return line(tr("The search for what would make it hold was given up."), kSearchLink,
                tr("search"), palette);
  RemedyFolds folds = m_folds;
  folds.apply = !m_stale;
  return found() ? remediesHtml(*found(), folds, palette) : QString();
}

bool RemedySection::follow(const QString& link) {
  if (!link.startsWith(QStringLiteral("remedy:"))) return false;
  if (link.startsWith(QLatin1String(kApplyLink))) {
    apply(link.mid(qsizetype(std::string_view(kApplyLink).size())));
    return true;
  }
  if (link == QLatin1String(kAllLink)) m_folds.all = true;
  if (link == QLatin1String(kCannotLink)) m_folds.cannot = !m_folds.cannot;
  if (link == QLatin1String(kCancelLink)) giveUp(State::Cancelled);
  if (link == QLatin1String(kSearchLink)) {
    m_state = State::Waiting;
    search();
  }
  emit changed();
  return true;
}

void RemedySection::apply(const QString& index) {
  const CheckRemedies* here = found();
  const auto at = index.toULongLong();
  if (here && !m_stale && at < here->remedies.size())
    emit editRequested(remedyEdit(here->remedies[at]));
}

}  // namespace jw
