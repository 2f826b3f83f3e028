#pragma once

class QWidget;

namespace jw {

/// Makes Tab visit everything inside `root` that takes the focus, in the order of its layouts: top
/// to bottom, left to right.
void chainTabOrder(QWidget& root);

}  // namespace jw
