#include "store/failure.h"

#include <sqlite3.h>

namespace larderloop::store {
namespace {

Error damaged(const std::string& path, const std::string& words) {
  return make_error(ErrorKind::kStore, "'" + path + "' is damaged: " + words,
                    "keep this file as it is, and go on with a copy made by 'larderloop backup' or "
                    "one of the .backup files beside it");
}

Error unwritable(const std::string& path, const std::string& words) {
  return make_error(
      ErrorKind::kOutput, "'" + path + "' could not be written: " + words + "; nothing was changed",
      "make room on the disk, look whether it is healthy, and run the same command again");
}

Error of_io(const SqliteFailure& failure, const std::string& path) {
  switch (failure.code) {
    case SQLITE_IOERR_READ:
    case SQLITE_IOERR_SHORT_READ:
    case SQLITE_IOERR_CORRUPTFS:
    case SQLITE_IOERR_DATA:
      return damaged(path,
                     "the disk does not give back what was written (" + failure.message + ")");
    default:
      return unwritable(path, failure.message);
  }
}

}  // namespace

Error error_of(const SqliteFailure& failure, const std::string& path) {
  switch (failure.code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
    case SQLITE_PROTOCOL:
    case SQLITE_INTERRUPT:
      return make_error(ErrorKind::kBusy, "'" + path + "' is in use by another program",
                        "try again in a moment");
    case SQLITE_FULL:
      return unwritable(path, "the disk is full");
    case SQLITE_IOERR:
      return of_io(failure, path);
    case SQLITE_CORRUPT:
      return damaged(path, failure.message);
    case SQLITE_NOTADB:
      return make_error(
          ErrorKind::kStore, "'" + path + "' is not a book",
          "name the right file with --book; if this was a book once, restore a backup of it");
    case SQLITE_READONLY:
      if (failure.code != SQLITE_READONLY) {
        return make_error(ErrorKind::kStore,
                          "'" + path +
                              "' was left in the middle of a change and cannot be put right where "
                              "it can only be read",
                          "copy it, together with the files of the same name that end in -wal or "
                          "-journal, to a folder you may write to");
      }
      return make_error(
          ErrorKind::kOutput, "'" + path + "' can only be read; nothing was changed",
          "allow writing to the file and its folder, or copy it to a folder you may write to");
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return make_error(ErrorKind::kStore, "'" + path + "' cannot be opened: " + failure.message,
                        "look at the permissions of the file and of its folder");
    case SQLITE_CONSTRAINT:
    case SQLITE_TOOBIG:
    case SQLITE_MISMATCH:
      return make_error(
          ErrorKind::kBadData,
          "this does not fit into '" + path + "': " + failure.message + "; nothing was changed",
          "see what is wrong with the book: larderloop check");
    case SQLITE_ERROR:
    case SQLITE_SCHEMA:
      return make_error(ErrorKind::kStore,
                        "'" + path + "' does not have the form of a book: " + failure.message,
                        "see what is wrong with it: larderloop check; then restore a backup");
    default:
      return make_error(ErrorKind::kDefect, "'" + path + "': " + failure.message);
  }
}

}  // namespace larderloop::store
