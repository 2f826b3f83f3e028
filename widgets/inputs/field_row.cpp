#include "widgets/inputs/field_row.h"

#include <algorithm>

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>

#include "core/model/band.h"
#include "widgets/inputs/band_field.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/symbol_text.h"

namespace jw {
namespace {

constexpr int kPauseBeforeMessage = 350;  // ms
constexpr int kSymbolWidth = 30;          // px
constexpr int kEditorWidth = 122;         // px
constexpr int kHeight = 26;               // px, of a row of one line

QLabel* makeLabel(const FieldInfo& info, QWidget* buddy, QWidget* parent) {
  auto* label = new QLabel(symbolHtml(toQString(info.label)), parent);
  label->setProperty("role", "muted");
  label->setWordWrap(true);
  label->setBuddy(buddy);
  label->setToolTip(fieldToolTip(info));
  label->setMinimumWidth(1);
  return label;
}

QLabel* makeSymbol(const FieldInfo& info, QWidget* parent) {
  auto* symbol = new QLabel(symbolHtml(toQString(info.symbol)), parent);
  symbol->setProperty("role", "symbol");
  symbol->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  symbol->setMinimumWidth(kSymbolWidth);
  return symbol;
}

/// A choice whose labels need more room than the column of editors reaches into that of labels.
int editorWidth(FieldEditor& editor, int column) {
  constexpr int kMost = 186;  // px
  if (editor.info().kind != FieldKind::Choice) return column;
  editor.widget()->ensurePolished();
  return std::clamp(editor.widget()->sizeHint().width(), column, kMost);
}

}  // namespace

FieldRow::FieldRow(const FieldInfo& info, const QString& path, QWidget* parent)
    : QWidget(parent), editor_(makeEditor(info, path, this)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(2);
  grid->setColumnStretch(0, 1);
  if (!isWide(info)) grid->setRowMinimumHeight(0, kHeight);
  QLabel* symbol = info.symbol.empty() ? nullptr : makeSymbol(info, this);
  place(*grid, makeLabel(info, editor_->widget(), this), symbol);
  pause_.setSingleShot(true);
  pause_.setInterval(kPauseBeforeMessage);
  connect(&pause_, &QTimer::timeout, this, &FieldRow::showMessage);
  connect(&editor_->link(), &FieldLink::entryChanged, this, &FieldRow::entryChanged);
  connect(&editor_->link(), &FieldLink::bandRequested, this, &FieldRow::askForBand);
}

void FieldRow::place(QGridLayout& grid, QLabel* label, QLabel* symbol) {
  const bool wide = isWide(editor_->info());
  grid.addWidget(label, 0, 0, 1, wide ? 3 : 1);
  if (symbol != nullptr) grid.addWidget(symbol, 0, 1);
  if (wide) {
    grid.addWidget(editor_->widget(), 1, 0, 1, 3);
    return;
  }
  const int extra = symbol == nullptr ? kSymbolWidth + grid.horizontalSpacing() : 0;
  editor_->widget()->setFixedWidth(editorWidth(*editor_, kEditorWidth + extra));
  grid.addWidget(editor_->widget(), 0, symbol == nullptr ? 1 : 2, 1, symbol == nullptr ? 2 : 1);
}

void FieldRow::showField(const FieldRef& field) {
  const bool applies = field.info->applies == nullptr || field.info->applies(field.owner);
  if (!applies) discardEntry();
  editor_->showField(field);
  if (field.info->kind == FieldKind::Number) showBand(field);
  if (applies == isHidden()) setVisible(applies);
}

void FieldRow::showBand(const FieldRef& field) {
  if (band_ == nullptr && bandText(field).empty()) return;
  if (band_ == nullptr) makeBand();
  band_->showField(field);
  bandLine_->setVisible(!band_->isIdle());
}

void FieldRow::makeBand() {
  bandLine_ = new QWidget(this);
  band_ = new BandField(editor_->link(), bandLine_);
  band_->setFixedWidth(editor_->widget()->width());
  auto* label = new QLabel(tr("tolerance"), bandLine_);
  label->setProperty("role", "muted");
  label->setBuddy(band_);
  auto* line = new QHBoxLayout(bandLine_);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(8);
  line->addStretch(1);
  line->addWidget(label);
  line->addWidget(band_);
  static_cast<QGridLayout*>(layout())->addWidget(bandLine_, 1, 0, 1, 3);
  connect(band_, &BandField::entryChanged, this, &FieldRow::entryChanged);
  connect(band_, &BandField::left, this, [this] { bandLine_->setVisible(!band_->isIdle()); });
  setTabOrder(editor_->widget(), band_);
}

void FieldRow::askForBand() {
  if (band_ == nullptr) makeBand();
  bandLine_->show();
  band_->setFocus(Qt::OtherFocusReason);
  band_->selectAll();
}

QString FieldRow::wrongEntry() const {
  const QString wrong = editor_->wrongEntry();
  return wrong.isEmpty() && band_ != nullptr ? band_->wrongEntry() : wrong;
}

void FieldRow::discardEntry() {
  editor_->discardEntry();
  if (band_ != nullptr) band_->discardEntry();
}

void FieldRow::entryChanged(bool settled) {
  if (!isWrong() || settled) {
    pause_.stop();
    showMessage();
  } else if (message_ != nullptr && !message_->isHidden()) {
    message_->setText(wrongEntry());
  } else {
    pause_.start();
  }
  emit wrongChanged();
}

void FieldRow::showMessage() {
  const QString text = wrongEntry();
  if (message_ == nullptr) {
    if (text.isEmpty()) return;
    message_ = new QLabel(this);
    message_->setProperty("role", "error");
    message_->setWordWrap(true);
    message_->setTextFormat(Qt::PlainText);
    message_->setObjectName(editor_->link().path() + ".message");
    static_cast<QGridLayout*>(layout())->addWidget(message_, 2, 0, 1, 3);
  }
  message_->setText(text);
  message_->setVisible(!text.isEmpty());
}

}  // namespace jw
