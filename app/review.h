#pragma once

#include <vector>

#include <QByteArray>
#include <QString>
#include <tl/expected.hpp>

#include "widgets/snapshot.h"

namespace jw {

/// What a design review is made of.
struct Review {
  QString fileName;  ///< of the project, for the head; may be empty
  Snapshot snapshot;
  std::vector<InputError> notes;  ///< remarks about the file
};

/// One PDF: summary, figures, inputs, verdicts with their working, cautions.
QByteArray reviewPdf(const Review& review);

/// Writes review.pdf, a PNG of each figure and verdicts.txt into `folder`, each in one step;
/// creates the folder. Fails if a file is in its place or something cannot be written.
tl::expected<void, InputError> writeReview(const Review& review, const QString& folder);

}  // namespace jw
