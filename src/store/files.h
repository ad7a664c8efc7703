// files.h - the file system's part: made beside the target, synced, given its name without
// overwriting. Errors:   StoreFailure.
#pragma once

#include <cstdint>
#include <string>
#include <sys/types.h>

namespace larderloop::store {

// A path that does not depend on the current folder, through symbolic links when the file exists.
[[nodiscard]] std::string real_path(const std::string& path);

// kNotFound, or kStore when `path` cannot be a book: a folder, a device, empty, not readable.
void expect_readable_file(const std::string& path);
// May this process write the file and make files beside it?
[[nodiscard]] bool may_write(const std::string& path);
[[nodiscard]] bool exists(const std::string& path);
// Not there, or nothing in it.
[[nodiscard]] bool absent_or_empty(const std::string& path);

// Enough of a file's state to notice that somebody wrote to it.
struct FileState {
  dev_t device{};
  ino_t inode{};
  off_t size{};
  std::int64_t changed_s{}, changed_ns{};
  friend bool operator==(const FileState&, const FileState&) = default;
};
[[nodiscard]] FileState file_state(const std::string& path);

// kBadData when `path`, or what an earlier book of that name left beside it, exists.
void expect_free(const std::string& path);

// An empty file with a name of its own in the folder of `target`, mode 0600. Gone with this object
// unless published.
class NewFile {
 public:
  explicit NewFile(std::string target);
  ~NewFile();
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;
  NewFile(NewFile&&) = delete;
  NewFile& operator=(NewFile&&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }
  // Syncs the file, gives it the target's name and syncs the folder. Never overwrites (kBadData).
  // Pre: nobody has it open.
  void publish();

 private:
  std::string target_;
  std::string path_;
  bool published_ = false;
};

}  // namespace larderloop::store
