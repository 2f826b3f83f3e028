#pragma once

#include <QByteArray>
#include <QDate>

namespace jw {

/// Puts midnight of `date` in the place of the time at which Qt wrote this PDF, so that the same
/// content gives the same bytes. Nothing moves in the file. An invalid date leaves it as it is.
void setPdfDate(QByteArray& pdf, const QDate& date);

}  // namespace jw
