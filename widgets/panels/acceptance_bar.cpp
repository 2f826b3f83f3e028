#include "widgets/panels/acceptance_bar.h"

#include <QDate>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QStyle>
#include <QVBoxLayout>

#include "core/checks/acceptance_check.h"
#include "core/model/acceptance.h"

namespace jw {
namespace {

bool isSame(const std::optional<Check>& before, const Check* now) {
  return before && now && before->id == now->id && before->stage == now->stage;
}

void markWrong(QLineEdit& entry, bool wrong, const QString& why) {
  entry.setProperty("state", wrong ? "wrong" : "");
  entry.setToolTip(wrong ? why : QString());
  entry.style()->unpolish(&entry);
  entry.style()->polish(&entry);
}

Edit acceptEdit(const Check& check, const QString& note, const QString& date) {
  const Acceptance one = acceptanceOf(check, note.toStdString(), date.toStdString());
  return {AcceptanceBar::tr("Accept %1").arg(QString::fromStdString(check.title).toLower()),
          {},
          [one](Project& project) -> tl::expected<void, InputError> {
            if (project.active().accepted.size() >= kMostAcceptances) {
              return tl::unexpected(InputError{"too many verdicts are accepted", "accepted",
                                               "withdraw some of them first"});
            }
            putAcceptance(project.active(), one);
            return {};
          }};
}

Edit withdrawEdit(const Check& check) {
  return {AcceptanceBar::tr("Withdraw the acceptance of %1")
              .arg(QString::fromStdString(check.title).toLower()),
          {},
          [id = std::string(check.id),
           stage = check.stage](Project& project) -> tl::expected<void, InputError> {
            withdrawAcceptance(project.active(), id, stage);
            return {};
          }};
}

}  // namespace

AcceptanceBar::AcceptanceBar(QWidget* parent)
    : QWidget(parent),
      m_text(new QLabel(this)),
      m_open(makeLink({}, "acceptance.open")),
      m_withdraw(makeLink(tr("&Withdraw"), "acceptance.withdraw")),
      m_note(new QLineEdit(this)),
      m_date(new QLineEdit(this)),
      m_form(makeForm()) {
  setObjectName(QStringLiteral("acceptance"));
  m_text->setObjectName(QStringLiteral("acceptance.text"));
  m_text->setTextFormat(Qt::PlainText);
  m_text->setWordWrap(true);
  m_text->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  auto* links = new QHBoxLayout;
  links->setSpacing(12);
  links->addWidget(m_open);
  links->addWidget(m_withdraw);
  links->addStretch();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(14, 4, 10, 8);
  column->setSpacing(4);
  column->addWidget(m_text);
  column->addLayout(links);
  column->addWidget(m_form);
  connect(m_open, &QToolButton::clicked, this, &AcceptanceBar::openForm);
  connect(m_withdraw, &QToolButton::clicked, this, &AcceptanceBar::withdraw);
  closeForm();
  showCheck(nullptr, false);
}

QToolButton* AcceptanceBar::makeLink(const QString& text, const QString& name) {
  auto* link = new QToolButton(this);
  link->setObjectName(name);
  link->setProperty("role", "link");
  link->setFocusPolicy(Qt::StrongFocus);
  link->setText(text);
  return link;
}

QWidget* AcceptanceBar::makeForm() {
  auto* form = new QWidget(this);
  m_note->setObjectName(QStringLiteral("acceptance.note"));
  m_note->setAccessibleName(tr("Why the verdict is accepted"));
  m_note->setPlaceholderText(tr("Why it may stay as it is"));
  m_date->setObjectName(QStringLiteral("acceptance.date"));
  m_date->setAccessibleName(tr("Date of the acceptance"));
  auto* done = new QPushButton(tr("&Accept"), form);
  done->setObjectName(QStringLiteral("acceptance.accept"));
  auto* dateRow = new QHBoxLayout;
  dateRow->addWidget(m_date, 1);
  dateRow->addWidget(done);
  auto* column = new QVBoxLayout(form);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(m_note);
  column->addLayout(dateRow);
  connect(done, &QPushButton::clicked, this, &AcceptanceBar::accept);
  connect(m_note, &QLineEdit::returnPressed, this, &AcceptanceBar::accept);
  connect(m_date, &QLineEdit::returnPressed, this, &AcceptanceBar::accept);
  return form;
}

void AcceptanceBar::showCheck(const Check* check, bool stale) {
  if (!isSame(m_check, check)) closeForm();
  m_check = check ? std::optional<Check>(*check) : std::nullopt;
  m_stale = stale;
  sayWhatIs();
}

void AcceptanceBar::sayWhatIs() {
  const bool accepted = m_check && m_check->accepted;
  const bool stands = m_check && standsAccepted(*m_check);
  const bool mayBe = m_check && !stands && mayAccept(*m_check).has_value();
  setVisible(accepted || mayBe);
  if (!mayBe) closeForm();
  QString text = accepted ? QString::fromStdString(acceptedText(*m_check)) : QString();
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  m_text->setText(text);
  m_text->setVisible(accepted);
  m_text->setToolTip(accepted && !stands
                         ? tr("Its demand or capacity has changed by more than the band of "
                              "acceptance since.")
                         : QString());
  m_open->setText(accepted ? tr("&Accept again…") : tr("&Accept as it is…"));
  m_open->setVisible(mayBe && m_form->isHidden());
  m_open->setEnabled(!m_stale);
  m_withdraw->setVisible(accepted);
}

void AcceptanceBar::openForm() {
  const auto& before = m_check->accepted;
  m_note->setText(before ? QString::fromStdString(before->note) : QString());
  m_date->setText(QDate::currentDate().toString(Qt::ISODate));
  markWrong(*m_date, false, {});
  m_form->show();
  m_open->hide();
  m_note->setFocus(Qt::OtherFocusReason);
}

void AcceptanceBar::closeForm() {
  m_form->hide();
  m_open->show();
}

void AcceptanceBar::accept() {
  const QString date = m_date->text().trimmed();
  const bool isDate = QDate::fromString(date, Qt::ISODate).isValid();
  markWrong(*m_date, !isDate, tr("No date: year-month-day, such as 2026-03-31"));
  if (!isDate || !m_check || m_stale || !mayAccept(*m_check)) return;
  const Edit edit = acceptEdit(*m_check, m_note->text().trimmed(), date);
  closeForm();
  emit editRequested(edit);
}

void AcceptanceBar::withdraw() {
  if (m_check) emit editRequested(withdrawEdit(*m_check));
}

void AcceptanceBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape || m_form->isHidden()) return QWidget::keyPressEvent(event);
  closeForm();
  m_open->setFocus(Qt::OtherFocusReason);
}

}  // namespace jw
