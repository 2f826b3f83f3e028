#include "widgets/pdf_date.h"

namespace jw {

void setPdfDate(QByteArray& pdf, const QDate& date) {
  static const QByteArray kStart("/CreationDate (D:");
  constexpr qsizetype kDigits = 14;  // yyyyMMddHHmmss
  const qsizetype found = pdf.indexOf(kStart);
  if (found < 0 || !date.isValid()) return;
  const qsizetype from = found + kStart.size();
  const qsizetype end = pdf.indexOf(')', from);
  if (end < from + kDigits) return;
  pdf.replace(from, kDigits, date.toString(QStringLiteral("yyyyMMdd")).toLatin1() + "000000");
  // The time zone behind it is "Z" or of the form "+01'00'".
  for (qsizetype k = from + kDigits; k < end; ++k) {
    if (pdf[k] == '-') pdf[k] = '+';
    if (pdf[k] >= '1' && pdf[k] <= '9') pdf[k] = '0';
  }
}

}  // namespace jw
