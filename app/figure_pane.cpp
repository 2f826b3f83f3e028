#include "app/figure_pane.h"

#include <QHBoxLayout>
#include <QToolButton>
#include <QVBoxLayout>

#include "widgets/figures/cycle_figure.h"
#include "widgets/figures/drive_figure.h"
#include "widgets/figures/envelope_figure.h"
#include "widgets/figures/families_figure.h"
#include "widgets/figures/heat_figure.h"
#include "widgets/figures/precision_figure.h"
#include "widgets/figures/ratio_figure.h"
#include "widgets/figures/search_figure.h"
#include "widgets/figures/tolerance_figure.h"

namespace jw {

FigurePane::FigurePane(const QString& name, QWidget* parent)
    : QFrame(parent), tabs_(new QTabBar(this)), stack_(new QStackedWidget(this)), cursor_(kUnset) {
  setObjectName(name);
  setProperty("role", "panel");
  tabs_->setObjectName(name + ".tabs");
  tabs_->setAccessibleName(tr("Figures"));
  tabs_->setDrawBase(false);
  tabs_->setExpanding(false);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(1, 1, 1, 1);
  column->setSpacing(0);
  column->addWidget(makeHeader());
  column->addWidget(makeScroll(), 1);
  addFigure(new EnvelopeFigure(stack_));
  addFigure(new CycleFigure(stack_));
  addFigure(new HeatFigure(stack_));
  addFigure(new RatioFigure(stack_));
  addFigure(new DriveFigure(stack_));
  addFigure(new PrecisionFigure(stack_));
  addFigure(new ToleranceFigure(stack_));
  addFigure(new FamiliesFigure(stack_));
  addFigure(new SearchFigure(stack_));
  connect(tabs_, &QTabBar::currentChanged, this, [this](int index) {
    stack_->setCurrentIndex(index);
    bringUpToDate();
    emit currentChanged();
  });
}

QWidget* FigurePane::makeScroll() {
  constexpr int kLeastHeight = 440;  // below it the rows of a figure run into each other
  stack_->setMinimumHeight(kLeastHeight);
  scroll_ = new QScrollArea(this);
  scroll_->setWidgetResizable(true);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setFocusPolicy(Qt::NoFocus);
  scroll_->setWidget(stack_);
  return scroll_;
}

QWidget* FigurePane::makeHeader() {
  auto* header = new QWidget(this);
  auto* row = new QHBoxLayout(header);
  row->setContentsMargins(6, 0, 4, 0);
  row->setSpacing(0);
  row->addWidget(tabs_, 1);
  const auto button = [&](const char* name, const QString& text, const QString& tip) {
    auto* made = new QToolButton(header);
    made->setObjectName(objectName() + name);
    made->setText(text);
    made->setToolTip(tip);
    made->setAccessibleName(tip);
    row->addWidget(made);
    return made;
  };
  connect(button(".copy", tr("Copy"), tr("Copy the figure as a picture")), &QToolButton::clicked,
          this, [this] {
            current()->copyPicture();
            emit copied();
          });
  connect(button(".export", tr("Export…"), tr("Export the figure to a file")),
          &QToolButton::clicked, this, [this] { emit exportRequested(exportName()); });
  return header;
}

void FigurePane::addFigure(Figure* figure) {
  figure->setObjectName(objectName() + "." + figure->figureName());
  stack_->addWidget(figure);
  tabs_->addTab(figure->title());
  shown_.push_back(false);
  connect(figure, &Figure::cursorTimeChanged, this, &FigurePane::cursorTimeChanged);
  connect(figure, &Figure::exportRequested, this, &FigurePane::exportRequested);
  connect(figure, &Figure::fieldRequested, this, &FigurePane::fieldRequested);
  connect(figure, &Figure::editRequested, this, &FigurePane::editRequested);
}

void FigurePane::showSnapshot(const Snapshot& snapshot) {
  snapshot_ = snapshot;
  shown_.assign(shown_.size(), false);
  bringUpToDate();
}

void FigurePane::bringUpToDate() {
  if (!snapshot_.project) return;
  // The pane scrolls down only: it stays as wide as its figures need.
  scroll_->setMinimumWidth(stack_->minimumSizeHint().width());
  const auto index = static_cast<std::size_t>(stack_->currentIndex());
  if (!shown_[index]) current()->showSnapshot(snapshot_);
  shown_[index] = true;
  current()->setCursorTime(cursor_);
}

void FigurePane::setCursorTime(double s) {
  cursor_ = s;
  current()->setCursorTime(s);
}

Figure* FigurePane::current() const { return static_cast<Figure*>(stack_->currentWidget()); }

QString FigurePane::currentName() const { return current()->figureName(); }

QString FigurePane::exportName() const { return current()->exportName(); }

void FigurePane::setCurrent(const QString& figureName) {
  const int index = stack_->indexOf(figure(figureName));
  if (index >= 0) tabs_->setCurrentIndex(index);
}

void FigurePane::addStudies(Snapshot& snapshot) const {
  for (const Figure* each : findChildren<Figure*>()) each->addStudies(snapshot);
  current()->addStudies(snapshot);
}

Figure* FigurePane::figure(const QString& figureName) const {
  return findChild<Figure*>(objectName() + "." + figureName);
}

}  // namespace jw
