#include "store/files.h"

#include "store/failure.h"

#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace larderloop::store {
namespace {

std::string words_of(int number) {
  return std::generic_category().message(number);
}

[[noreturn]] void cannot_write(const std::string& path, int number) {
  throw StoreFailure(
      ErrorKind::kOutput, "'" + path + "' could not be written: " + words_of(number),
      "look at the folder, its permissions and the space on the disk, or name another file");
}

[[noreturn]] void taken(const std::string& path) {
  throw StoreFailure(ErrorKind::kBadData, "'" + path + "' exists already; it was left as it is",
                     "name another file");
}

std::string folder_of(const std::string& path) {
  const std::string folder = std::filesystem::path(path).parent_path().string();
  return folder.empty() ? "." : folder;
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  Descriptor(Descriptor&&) = delete;
  Descriptor& operator=(Descriptor&&) = delete;
  [[nodiscard]] int number() const { return number_; }

 private:
  int number_;
};

void sync_file(const std::string& path) {
  const Descriptor file(open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.number() < 0 || fsync(file.number()) != 0) cannot_write(path, errno);
}

void sync_folder(const std::string& path) {
  // Some file systems cannot sync a folder; they say EINVAL, and there is nothing more that could
  // be done.
  const Descriptor folder(open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (folder.number() >= 0 && fsync(folder.number()) != 0 && errno != EINVAL && errno != ENOTSUP)
    cannot_write(path, errno);
}

// Gives `from` the name `to` if that is free. 0 or an error number.
int rename_if_free(const std::string& from, const std::string& to) {
  if (renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return 0;
  if (errno != EINVAL && errno != ENOSYS) return errno;
  // This file system cannot rename so; a second name is refused just as safely when the first one
  // is taken.
  if (link(from.c_str(), to.c_str()) != 0) return errno;
  return unlink(from.c_str()) == 0 ? 0 : errno;
}

constexpr const char* kCompanions[] = {"-wal", "-shm", "-journal"};

}  // namespace

std::string real_path(const std::string& path) {
  std::error_code error;
  const std::filesystem::path real = std::filesystem::canonical(path, error);
  if (!error) return real.string();
  const std::filesystem::path absolute = std::filesystem::absolute(path, error);
  return error ? path : absolute.string();
}

void expect_readable_file(const std::string& path) {
  struct stat found {};
  if (stat(path.c_str(), &found) != 0) {
    if (errno == ENOENT || errno == ENOTDIR) {
      throw StoreFailure(ErrorKind::kNotFound, "there is no book '" + path + "'",
                         "name one with --book, or make it: larderloop new '" + path + "'");
    }
    throw StoreFailure(ErrorKind::kStore, "'" + path + "' cannot be opened: " + words_of(errno),
                       "look at the permissions of its folder");
  }
  if (S_ISDIR(found.st_mode)) {
    throw StoreFailure(ErrorKind::kStore, "'" + path + "' is a folder, not a book",
                       "name the file in it: --book '" + path + "/household.book'");
  }
  if (!S_ISREG(found.st_mode)) {
    throw StoreFailure(ErrorKind::kStore, "'" + path + "' is not a file, so it is no book",
                       "name the right file with --book");
  }
  if (faccessat(AT_FDCWD, path.c_str(), R_OK, AT_EACCESS) != 0) {
    throw StoreFailure(ErrorKind::kStore, "'" + path + "' cannot be read: " + words_of(errno),
                       "look at the permissions of the file");
  }
  if (found.st_size == 0) {
    throw StoreFailure(
        ErrorKind::kStore, "'" + path + "' is empty, so it is no book",
        "restore a backup of it; or move the empty file away and begin anew: larderloop new '" +
            path + "'");
  }
}

bool may_write(const std::string& path) {
  return faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) == 0 &&
         faccessat(AT_FDCWD, folder_of(path).c_str(), W_OK | X_OK, AT_EACCESS) == 0;
}

bool exists(const std::string& path) {
  struct stat found {};
  return lstat(path.c_str(), &found) == 0;
}

bool absent_or_empty(const std::string& path) {
  struct stat found {};
  if (stat(path.c_str(), &found) != 0) return errno == ENOENT;
  return found.st_size == 0;
}

FileState file_state(const std::string& path) {
  struct stat found {};
  if (stat(path.c_str(), &found) != 0) {
    throw StoreFailure(ErrorKind::kStore, "'" + path + "' cannot be read: " + words_of(errno),
                       "try again");
  }
  return {found.st_dev, found.st_ino, found.st_size, found.st_ctim.tv_sec, found.st_ctim.tv_nsec};
}

void expect_free(const std::string& path) {
  if (exists(path)) taken(path);
  for (const char* companion : kCompanions) {
    if (!exists(path + companion)) continue;
    // SQLite would take it for a part of the new file.
    throw StoreFailure(
        ErrorKind::kBadData,
        "'" + path + companion + "' is there without its book; nothing was made",
        "if the book was moved, move this file after it; otherwise name another file");
  }
}

NewFile::NewFile(std::string target) : target_(std::move(target)) {
  expect_free(target_);
  std::string pattern = target_ + ".unfinished-XXXXXX";
  const Descriptor file(mkostemp(pattern.data(), O_CLOEXEC));
  if (file.number() < 0) cannot_write(target_, errno);
  path_ = std::move(pattern);
}

NewFile::~NewFile() {
  if (published_) return;
  unlink(path_.c_str());
  for (const char* companion : kCompanions) unlink((path_ + companion).c_str());
}

void NewFile::publish() {
  sync_file(path_);
  expect_free(target_);
  const int number = rename_if_free(path_, target_);
  if (number == EEXIST) taken(target_);
  if (number != 0) cannot_write(target_, number);
  published_ = true;
  sync_folder(target_);
}

}  // namespace larderloop::store
