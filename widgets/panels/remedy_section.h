#pragma once

#include <memory>

#include <QObject>
#include <QTimer>

#include "core/studies/remedies.h"
#include "widgets/edit.h"
#include "widgets/panels/remedy_text.h"
#include "widgets/snapshot.h"
#include "widgets/study_thread.h"

namespace jw {

/// The part of a working that says what would make the verdict hold. It searches beside the window
/// for the chosen verdict, as soon as the design rests for a moment, and gives HTML. Motors are
/// those of the catalogue in use.
class RemedySection : public QObject {
  Q_OBJECT

 public:
  explicit RemedySection(QObject* parent = nullptr);

  /// Chooses a check of `snapshot`; null = none. A search for another design or verdict is given
  /// up; of the same one it goes on, or what was found stays.
  void showCheck(const Snapshot& snapshot, const Check* check);
  /// Empty where the verdict needs no remedy.
  QString html(const Palette& palette) const;
  /// Follows one of the section's links; false if `link` is none of them.
  bool follow(const QString& link);
  bool isSearching() const { return m_state == State::Waiting; }
  /// What was found for the check that is shown; null until then.
  const CheckRemedies* found() const;

 signals:
  void changed();  ///< another html()
  void editRequested(const jw::Edit& edit);

 private:
  enum class State { None, Waiting, Cancelled, Found };
  void search();
  void receive(std::shared_ptr<const Remedies> found);
  void giveUp(State state);
  void apply(const QString& index);

  State m_state = State::None;
  bool m_stale = false;
  std::shared_ptr<const Project> m_project;
  std::string m_id;
  int m_stage = -1;
  std::shared_ptr<const Remedies> m_found;
  RemedyFolds m_folds;
  QTimer m_rest;
  StudyThread m_thread;
};

}  // namespace jw
