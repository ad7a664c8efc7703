// Several programs at once, programs that are killed, disks that are full.
#include "larderloop/core/changes.h"
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

#include <chrono>
#include <csignal>
#include <random>
#include <sys/resource.h>
#include <thread>

namespace larderloop::testing {
namespace {

class Together : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(is_done(Book::create(path_, before_, {}))); }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  Household before_ = sample_household();
};

// One entry more, with the next number, as a command would add it.
Result<std::int64_t> add_one(Book& book) {
  auto write = book.begin_write();
  if (!write) return fail(write.error());
  auto household = write->load();
  if (!household) return fail(household.error());
  Changes changes;
  changes.entries = {
      sample_entry(next_ids(*household).entry.value(), EntryKind::kFound, "2026-06-01", 6)};
  if (Status applied = write->apply(changes); !applied) return fail(applied.error());
  if (Status committed = write->commit(); !committed) return fail(committed.error());
  return changes.entries[0].id.value();
}

std::string add_many(const std::string& path, int number) {
  for (int i = 0; i < number; ++i) {
    auto book = Book::open(path, {});
    if (!book) return said(book);
    if (const auto added = add_one(*book); !added) return said(added);
  }
  return "done";
}

TEST_F(Together, TwoWritersBothGetEverythingIn) {
  constexpr int kEach = 20;
  std::string one;
  std::string two;
  std::thread first([&] { one = in_child([&] { return add_many(path_, kEach); }); });
  std::thread second([&] { two = in_child([&] { return add_many(path_, kEach); }); });
  first.join();
  second.join();
  EXPECT_EQ(one, "done");
  EXPECT_EQ(two, "done");
  const auto loaded = load_from(path_);
  ASSERT_TRUE(is_done(loaded));
  EXPECT_EQ(loaded->entries.size(), before_.entries.size() + 2 * kEach);
  EXPECT_TRUE(check_of(path_)->empty());
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
}

TEST_F(Together, AWriterThatWaitsTooLongIsToldSo) {
  auto book = Book::open(path_, {});
  ASSERT_TRUE(is_done(book));
  auto write = book->begin_write();
  ASSERT_TRUE(is_done(write));
  auto other = Book::open(path_, {20, ""});
  ASSERT_TRUE(is_done(other));
  EXPECT_TRUE(failed_as(other->begin_write(), ErrorKind::kBusy));
  EXPECT_EQ(*other->load(), before_) << "reading goes on meanwhile";
}

TEST_F(Together, OfTwoWhoMakeTheSameBookOneDoes) {
  const std::string path = folder_.file("new.book");
  std::string one;
  std::string two;
  std::thread first([&] { one = in_child([&] { return said(Book::create(path, before_, {})); }); });
  std::thread second(
      [&] { two = in_child([&] { return said(Book::create(path, before_, {})); }); });
  first.join();
  second.join();
  EXPECT_EQ((one == "done") + (two == "done"), 1) << one << " / " << two;
  EXPECT_EQ(*load_from(path), before_);
  EXPECT_EQ(folder_.names(), (std::set<std::string>{"household.book", "new.book"}));
}

// Adds entries and says each number once it is committed, until it is killed.
pid_t start_writer(const std::string& path, int& says) {
  int ends[2];
  if (pipe(ends) != 0) return -1;
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    auto book = Book::open(path, {});
    while (book) {
      const auto added = add_one(*book);
      if (!added || write(ends[1], &*added, sizeof *added) != sizeof *added) break;
    }
    _exit(1);
  }
  close(ends[1]);
  says = ends[0];
  return child;
}

TEST_F(Together, AKilledWriterLosesNothingItSaidWasDone) {
  std::mt19937_64 random(17);
  std::int64_t total = 0;
  for (int round = 0; round < 12 * scale(); ++round) {
    int says = -1;
    const pid_t child = start_writer(path_, says);
    ASSERT_GT(child, 0);
    std::this_thread::sleep_for(std::chrono::milliseconds(20 + random() % 60));
    kill(child, SIGKILL);
    std::int64_t last = 0;
    for (std::int64_t number = 0; read(says, &number, sizeof number) == sizeof number;)
      last = number;
    close(says);
    int state = 0;
    waitpid(child, &state, 0);
    EXPECT_TRUE(WIFSIGNALED(state)) << "the writer stopped by itself";
    const auto findings = check_of(path_);
    ASSERT_TRUE(is_done(findings));
    EXPECT_TRUE(findings->empty()) << findings->front();
    const auto loaded = load_from(path_);
    ASSERT_TRUE(is_done(loaded));
    EXPECT_GE(loaded->entries.back().id.value(), last);
    EXPECT_LE(loaded->entries.back().id.value(), std::max(last, total) + 1)
        << "an entry nobody wrote";
    const std::size_t added = loaded->entries.size() - before_.entries.size();
    EXPECT_EQ(loaded->entries.back().id.value(),
              before_.entries.back().id.value() + static_cast<std::int64_t>(added))
        << "a gap";
    EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
    total = loaded->entries.back().id.value();
  }
  EXPECT_GT(total, before_.entries.back().id.value()) << "no writer ever got anything done";
}

// Files may not grow beyond `bytes`: to a program the same as a disk that is full.
void fill_the_disk(rlim_t bytes) {
  signal(SIGXFSZ, SIG_IGN);
  const rlimit limit{bytes, bytes};
  setrlimit(RLIMIT_FSIZE, &limit);
}

TEST_F(Together, AFullDiskMakesNoBook) {
  const std::string path = folder_.file("new.book");
  for (const rlim_t room : {rlim_t{0}, rlim_t{8192}, rlim_t{100'000}}) {
    const std::string answer = in_child([&] {
      fill_the_disk(room);
      return said(Book::create(path, before_, {}));
    });
    EXPECT_EQ(answer.find("output: '" + path + "' could not be written"), 0u) << answer;
    EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
  }
}

TEST_F(Together, AFullDiskChangesNothing) {
  const auto size = static_cast<rlim_t>(std::filesystem::file_size(path_));
  // From "no room at all" to "room for a part of it".
  for (const rlim_t room : {rlim_t{0}, rlim_t{16'384}, rlim_t{65'536}, size, size + 100'000}) {
    const std::string answer = in_child([&] {
      fill_the_disk(room);
      Changes changes;
      Entry entry = sample_entry(50, EntryKind::kFound, "2026-06-01", 6);
      entry.note = std::string(2'000'000, 'x');
      changes.entries = {entry};
      return said(write_to(path_, changes));
    });
    EXPECT_EQ(answer.find("output: '" + path_ + "' could not be written"), 0u)
        << room << ": " << answer;
    EXPECT_EQ(*load_from(path_), before_);
    EXPECT_TRUE(check_of(path_)->empty());
    EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
  }
}

TEST_F(Together, ABookCanBeReadOnAFullDisk) {
  EXPECT_EQ(in_child([&]() -> std::string {
              fill_the_disk(0);
              const auto loaded = load_from(path_);
              // A pipe is no file; the answer gets through.
              return !loaded ? said(loaded) : *loaded == before_ ? "the same" : "another household";
            }),
            "the same");
}

TEST_F(Together, AFullDiskMakesNoBackup) {
  const std::string copy = folder_.file("copy.book");
  const std::string answer = in_child([&]() -> std::string {
    auto book = Book::open_read_only(path_, {});
    if (!book) return said(book);
    fill_the_disk(100'000);
    return said(book->backup(copy));
  });
  EXPECT_EQ(answer.find("output: '" + copy + "' could not be written"), 0u) << answer;
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
}

}  // namespace
}  // namespace larderloop::testing
