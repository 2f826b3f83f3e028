#pragma once

#include <QString>
#include <QStringList>

#include "app/review.h"

namespace jw {

// The parts of a review as blocks of HTML, each short enough to stay on one page.

/// Title, variant, date and count of verdicts; then remarks and headline figures.
QString reviewHead(const Review& review);
QString reviewVerdictList(const Review& review);
QStringList reviewRemarks(const Review& review);
QString reviewQuantities(const Review& review);
/// One block for each station: supply, controller, motor, stages, load, cycle, requirements.
QStringList reviewInputs(const Review& review);
/// One block for each verdict, worst first.
QStringList reviewWorkings(const Review& review);
/// One block for each headline figure that is known.
QStringList reviewFigureWorkings(const Review& review);
QString reviewCautions();

}  // namespace jw
