#include "widgets/inputs/wrong_mark.h"

#include <QStyle>

#include "widgets/inputs/field_text.h"

namespace jw {

void setWrongMark(QWidget& editor, const FieldInfo& info, const QString& message) {
  const QString help = toQString(info.help);
  editor.setAccessibleDescription(message.isEmpty() ? help : message + ". " + help);
  const QString state = message.isEmpty() ? QString() : QStringLiteral("wrong");
  if (editor.property("state").toString() == state) return;
  editor.setProperty("state", state);
  editor.style()->unpolish(&editor);
  editor.style()->polish(&editor);
}

}  // namespace jw
