#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QToolButton>

#include "widgets/edit.h"
#include "widgets/snapshot.h"

namespace jw {

/// Under a working: accepts a verdict that is short or close as it is, with a note and a date, and
/// withdraws that. Hidden where there is nothing to accept or withdraw.
class AcceptanceBar : public QWidget {
  Q_OBJECT

 public:
  explicit AcceptanceBar(QWidget* parent = nullptr);

  /// Shows what can be done with the check. Null: nothing is chosen. The check of a `stale`
  /// evaluation can only be withdrawn: its demand and capacity are not those of now.
  void showCheck(const Check* check, bool stale);

 signals:
  void editRequested(const jw::Edit& edit);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* makeForm();
  QToolButton* makeLink(const QString& text, const QString& name);
  void openForm();
  void closeForm();
  void accept();
  void withdraw();
  void sayWhatIs();

  std::optional<Check> m_check;
  bool m_stale = false;
  QLabel* m_text;
  QToolButton* m_open;
  QToolButton* m_withdraw;
  QLineEdit* m_note;
  QLineEdit* m_date;
  QWidget* m_form;
};

}  // namespace jw
