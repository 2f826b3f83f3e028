#include "widgets/inputs/tab_chain.h"

#include <vector>

#include <QLayout>
#include <QWidget>

namespace jw {
namespace {

void collect(QWidget& widget, std::vector<QWidget*>& found);

void collect(QLayout& layout, std::vector<QWidget*>& found) {
  for (int k = 0; k < layout.count(); ++k) {
    if (QWidget* widget = layout.itemAt(k)->widget()) collect(*widget, found);
    if (QLayout* inner = layout.itemAt(k)->layout()) collect(*inner, found);
  }
}

void collect(QWidget& widget, std::vector<QWidget*>& found) {
  if (widget.focusPolicy() & Qt::TabFocus) found.push_back(&widget);
  if (widget.layout() != nullptr) collect(*widget.layout(), found);
}

}  // namespace

void chainTabOrder(QWidget& root) {
  std::vector<QWidget*> order;
  collect(root, order);
  for (std::size_t k = 1; k < order.size(); ++k) QWidget::setTabOrder(order[k - 1], order[k]);
}

}  // namespace jw
