// Every page of the window of measured logs in both themes and two sizes, kept as pictures beside
// the test program. Nothing that stands on one line may be clipped.
#include <QDir>

#include "tests/gui/log_support.h"
#include "widgets/theme/theme.h"

namespace jw::test {
namespace {

struct LogLook {
  ThemeKind theme;
  QSize size;
  const char* name;
};

void PrintTo(const LogLook& look, std::ostream* out) { *out << look.name; }

class LogLookTest : public LogDialogTest, public testing::WithParamInterface<LogLook> {
 protected:
  void SetUp() override {
    QDir(QCoreApplication::applicationDirPath()).mkpath("../pictures");
    applyTheme(*qApp, GetParam().theme);
    dialog.resize(GetParam().size);
    dialog.show();
  }
  void TearDown() override { applyTheme(*qApp, ThemeKind::Light); }

  void keep(const QString& page) {
    QTest::qWait(80);
    EXPECT_EQ(dialog.size(), GetParam().size);
    for (const QLabel* label : dialog.findChildren<QLabel*>()) {
      if (!label->isVisible() || label->text().isEmpty() || label->wordWrap()) continue;
      EXPECT_GE(label->width() + 1, label->sizeHint().width()) << label->text().toStdString();
    }
    const QString name = QString("../pictures/log-%1-%2.png").arg(page, GetParam().name);
    EXPECT_TRUE(dialog.grab().save(QCoreApplication::applicationDirPath() + "/" + name));
  }
};

TEST_P(LogLookTest, PagesArePictured) {
  Snapshot snapshot;
  auto project = std::make_shared<Project>();
  project->load.inertia = 1.6;
  project->load.linkMass = 5;
  project->load.linkDistance = 0.3;
  snapshot.project = project;
  dialog.showSnapshot(snapshot);
  InventedLog log;
  log.gapAfter = 2500;
  log.duplicateEvery = 700;
  open(dialog, log.text());
  auto* pages = find<QTabWidget>("log.pages");
  keep("columns");
  pages->setCurrentIndex(1);
  keep("motion");
  dialog.motionPage().canvas().setSeen(1, 1.4);
  keep("zoomed");
  pages->setCurrentIndex(2);
  keep("load");
  open(dialog, "time;angle;x1\n0;1,5;3\n0,1;2;3\n0,2;3.5;4\n0,3;4;5\n0,4;4;6\n0,5;4;6\n",
       "bad.csv");
  keep("refused");
}

INSTANTIATE_TEST_SUITE_P(Sizes, LogLookTest,
                         testing::Values(LogLook{ThemeKind::Light, {1280, 800}, "light1280"},
                                         LogLook{ThemeKind::Dark, {1280, 800}, "dark1280"},
                                         LogLook{ThemeKind::Light, {2560, 1440}, "light2560"},
                                         LogLook{ThemeKind::Dark, {2560, 1440}, "dark2560"}),
                         [](const testing::TestParamInfo<LogLook>& look) {
                           return std::string(look.param.name);
                         });

}  // namespace
}  // namespace jw::test
