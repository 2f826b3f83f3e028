// The window in both themes and two sizes with every sample. The pictures are kept beside the test
// program, for people to look at; what can be checked by itself is asserted: nothing is clipped.
#include <QAbstractButton>
#include <QDir>
#include <QLabel>

#include "tests/gui/support.h"
#include "widgets/theme/theme.h"

namespace jw::test {
namespace {

struct Look {
  ThemeKind theme;
  QSize size;
  const char* name;
};

void PrintTo(const Look& look, std::ostream* out) { *out << look.name; }

QString pictureFolder() {
  const QDir folder(QCoreApplication::applicationDirPath());
  folder.mkpath("../pictures");
  return folder.absoluteFilePath("../pictures");
}

std::string described(const QWidget& widget, const QString& text) {
  return (widget.objectName() + " \"" + text + "\" " + QString::number(widget.width()) + "x" +
          QString::number(widget.height()))
      .toStdString();
}

/// Labels in plain text on one line show all of it: they are as wide and high as they ask for.
void expectLabelsUnclipped(const QWidget& window) {
  for (const QLabel* label : window.findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty() || label->wordWrap()) continue;
    if (qobject_cast<const ElidedLabel*>(label) != nullptr) continue;
    EXPECT_GE(label->width() + 1, label->sizeHint().width()) << described(*label, label->text());
    EXPECT_GE(label->height() + 1, label->sizeHint().height()) << described(*label, label->text());
  }
}

void expectButtonsUnclipped(const QWidget& window) {
  for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
    if (!button->isVisible() || button->text().isEmpty()) continue;
    if (qobject_cast<const StationCard*>(button) != nullptr) continue;  // shortens long names
    const int needed = button->fontMetrics().horizontalAdvance(button->text().remove('&'));
    EXPECT_GE(button->width(), needed) << described(*button, button->text());
  }
}

class WindowLook : public testing::TestWithParam<Look> {
 protected:
  void SetUp() override { applyTheme(*qApp, GetParam().theme); }
  void TearDown() override { applyTheme(*qApp, ThemeKind::Light); }
};

TEST_P(WindowLook, NothingIsClippedInAnySample) {
  Answers answers;
  MainWindow window(answers);
  window.resize(GetParam().size);
  window.show();
  for (const QString& file : samples()) {
    SCOPED_TRACE(file.toStdString());
    ASSERT_TRUE(window.session().openSample(file));
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.document().isEvaluated(); }, 10'000));
    QTest::qWait(50);
    const QString name = QFileInfo(file).completeBaseName() + "-" + GetParam().name + ".png";
    EXPECT_TRUE(window.grab().save(pictureFolder() + "/" + name));
    EXPECT_EQ(window.size(), GetParam().size);
    expectLabelsUnclipped(window);
    expectButtonsUnclipped(window);
  }
}

INSTANTIATE_TEST_SUITE_P(Sizes, WindowLook,
                         testing::Values(Look{ThemeKind::Light, {1280, 800}, "light1280"},
                                         Look{ThemeKind::Dark, {1280, 800}, "dark1280"},
                                         Look{ThemeKind::Light, {2560, 1440}, "light2560"},
                                         Look{ThemeKind::Dark, {2560, 1440}, "dark2560"},
                                         Look{ThemeKind::Light, {1024, 700}, "light1024"}),
                         [](const testing::TestParamInfo<Look>& look) {
                           return std::string(look.param.name);
                         });

TEST(WindowParts, EverythingThatTakesTheFocusHasAName) {
  Answers answers;
  MainWindow window(answers);
  ASSERT_TRUE(window.session().openSample(samples().value(0)));
  window.show();
  for (const QWidget* widget : window.findChildren<QWidget*>()) {
    const bool tab = (widget->focusPolicy() & Qt::TabFocus) != 0 && widget->isVisible();
    if (!tab || widget->focusProxy() != nullptr) continue;
    const auto* button = qobject_cast<const QAbstractButton*>(widget);
    const bool named =
        !widget->accessibleName().isEmpty() || (button != nullptr && !button->text().isEmpty());
    EXPECT_TRUE(named) << widget->metaObject()->className() << " "
                       << widget->objectName().toStdString();
  }
}

}  // namespace
}  // namespace jw::test
