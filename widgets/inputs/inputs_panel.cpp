// Building the panel and showing projects in it.
#include "widgets/inputs/inputs_panel.h"

#include <algorithm>

#include <QHash>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/tab_chain.h"

namespace jw {
namespace {

constexpr int kWidth = 304;     // px
constexpr int kMinWidth = 296;  // px
constexpr int kMargin = 12;     // px

}  // namespace

InputsPanel::InputsPanel(QWidget* parent)
    : QWidget(parent), scroll_(new QScrollArea(this)), content_(new QWidget) {
  setObjectName("inputs");
  setAccessibleName(tr("Inputs"));
  setMinimumWidth(kMinWidth);
  auto* frame = new QVBoxLayout(this);
  frame->setContentsMargins(1, 1, 1, 1);
  frame->addWidget(scroll_);
  scroll_->setWidgetResizable(true);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setFocusPolicy(Qt::NoFocus);
  auto* column = new QVBoxLayout(content_);
  column->setContentsMargins(kMargin, 6, kMargin, kMargin);
  column->setSpacing(2);
  column->addStretch(1);
  scroll_->setWidget(content_);
}

QSize InputsPanel::sizeHint() const { return {kWidth, 600}; }

void InputsPanel::showProject(const Project& project) {
  const ProjectFields fields(project);
  if (sections_.empty()) build(fields);
  for (Form* form : forms_) form->showFields(*fields.find(form->path()));
  for (CardList* list : lists_) list->showItems(fields);
}

void InputsPanel::build(const ProjectFields& fields) {
  addSection("supply", "S&upply and controller", false);
  addForm(fields.find("supply"), true);
  addForm(fields.find("controller"), true);
  addSection("motor", "&Motor", true);
  addForm(fields.find("motor"));
  addSection("transmission", "&Drive", true);
  connect(addList(stagePlan()), &CardList::openRequested, this, &InputsPanel::partsRequested);
  addSection("load", "&Load", true);
  addForm(fields.find("load"));
  addList(massPlan());
  addRobotButton();
  addSection("cycle", "&Cycle", false);
  addForm(fields.find("cycle"));
  const CardList* moves = addList(segmentPlan());
  connect(moves, &CardList::openRequested, this, &InputsPanel::tableRequested);
  connect(moves, &CardList::otherRequested, this, &InputsPanel::logRequested);
  addSection("requirements", "&Requirements", false);
  addForm(fields.find("requirements"));
  addSection("project", "Pro&ject", false);
  addForm(fields.find(QString()));
  addForm(fields.find("variant"));
  for (CardList* list : lists_) list->showItems(fields);
  updateTabOrder();
  updateRemarks();
}

void InputsPanel::addRobotButton() {
  auto* button = new QPushButton(tr("From a robot description…"), sections_.back());
  button->setObjectName("load.robot");
  button->setAccessibleName(tr("Take the load from a robot description"));
  button->setAutoDefault(false);
  connect(button, &QPushButton::clicked, this, &InputsPanel::robotRequested);
  sections_.back()->add(button);
}

void InputsPanel::addSection(const QString& name, const QString& title, bool expanded) {
  auto* section = new Section(name, title, content_);
  auto* column = static_cast<QVBoxLayout*>(content_->layout());
  column->insertWidget(column->count() - 1, section);  // before the stretch
  section->setExpanded(expanded);
  sections_.push_back(section);
}

void InputsPanel::addForm(const FieldGroup* group, bool titled) {
  Q_ASSERT(group != nullptr);
  if (titled) {
    auto* title = new QLabel(toQString(group->info().title), sections_.back());
    title->setProperty("role", "title");
    sections_.back()->add(title);
  }
  auto* form = new Form(*group, sections_.back());
  connect(form, &Form::editRequested, this, &InputsPanel::editRequested);
  connect(form, &Form::wrongChanged, this, &InputsPanel::updateWrong);
  connect(form, &Form::rowsChanged, this, &InputsPanel::updateTabOrder);
  sections_.back()->add(form);
  forms_.push_back(form);
}

CardList* InputsPanel::addList(ListPlan plan) {
  auto* list = new CardList(std::move(plan), sections_.back());
  connect(list, &CardList::editRequested, this, &InputsPanel::editRequested);
  connect(list, &CardList::wrongChanged, this, &InputsPanel::updateWrong);
  connect(list, &CardList::rowsChanged, this, &InputsPanel::updateTabOrder);
  connect(list, &CardList::cardsChanged, this, [this] {
    updateTabOrder();
    updateNeeded();
    updateWrong();
  });
  sections_.back()->add(list);
  lists_.push_back(list);
  return list;
}

std::vector<Form*> InputsPanel::forms() const {
  std::vector<Form*> all = forms_;
  for (const CardList* list : lists_) {
    for (Card* card : list->cards()) all.push_back(&card->form());
  }
  return all;
}

/// Beside a section's title: how many items it has and how many fields a check waits for.
void InputsPanel::updateRemarks() {
  QHash<QString, int> waiting;
  for (const QString& path : needed_) ++waiting[sectionOf(path)];
  for (Section* section : sections_) {
    QStringList parts;
    for (const CardList* list : section->findChildren<CardList*>()) parts << list->countText();
    const int count = waiting.value(section->name());
    if (count > 0) parts << tr("%1 needed").arg(count);
    parts.removeAll(QString());
    section->header().setRemark(parts.join(QStringLiteral(" · ")));
  }
}

/// Name of the section that a field is in; empty if there is none.
QString InputsPanel::sectionOf(const QString& path) const {
  const QWidget* at = findRow(path);
  while (at != nullptr && qobject_cast<const Section*>(at) == nullptr) at = at->parentWidget();
  return at == nullptr ? QString() : static_cast<const Section*>(at)->name();
}

void InputsPanel::updateWrong() {
  bool any = false;
  for (Section* section : sections_) {
    const auto inside = section->findChildren<Form*>();
    const bool wrong = std::any_of(inside.begin(), inside.end(),
                                   [](const Form* form) { return form->hasWrongEntry(); });
    section->header().setWrong(wrong);
    any = any || wrong;
  }
  if (any == wrong_) return;
  wrong_ = any;
  emit wrongEntryChanged(any);
}

void InputsPanel::discardWrongEntries() {
  for (Form* form : forms()) form->discardEntries();
}

void InputsPanel::showSnapshot(const Snapshot& snapshot) {
  if (!snapshot.evaluation) return;
  QStringList needed;
  for (const Check& check : snapshot.evaluation->checks) {
    for (const std::string& path : check.missing) needed << toQString(path);
  }
  needed.removeDuplicates();
  if (needed == needed_) return;
  needed_ = needed;
  updateNeeded();
}

void InputsPanel::updateNeeded() {
  updateRemarks();
  for (Form* form : forms()) form->setNeeded(needed_);
}

void InputsPanel::updateTabOrder() { chainTabOrder(*content_); }

}  // namespace jw
