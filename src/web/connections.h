// connections.h - the open connections: one thread waits for the heads of all of them at once and
// hands on those that are complete, so that a slow client holds up nobody; a few workers answer.
// Limits:   so many connections, so long for a head, an idle wait and a farewell; when all places
// are taken, whoever has kept others
//           waiting longest goes first.
#pragma once

#include "web/head.h"

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace larderloop {

class Connections {
 public:
  using Clock = std::chrono::steady_clock;
  enum class After { kKeep, kClose };
  struct Limits {
    std::size_t most = 128;
    std::chrono::seconds head{10}, idle{15}, farewell{2};
    int workers = 4;
  };
  // A worker's: answers one request on this socket. `count`: requests of this connection before it.
  using Answer = std::function<After(int socket, const RequestHead& head, int count)>;
  // What is sent to a head that goes no further; the connection is closed behind it. Must not wait.
  using Refuse = std::function<std::string(int socket, const HeadFault& fault)>;

  Connections(const Limits& limits, Answer answer, Refuse refuse);
  ~Connections();
  Connections(const Connections&) = delete;
  Connections& operator=(const Connections&) = delete;
  // Takes over an accepted socket; any thread.
  void take(int socket);

 private:
  enum class State { kIdle, kReading, kLeaving };
  struct Waiting {
    int socket = -1;
    State state = State::kReading;
    int count = 0;
    std::string bytes;     // read so far
    std::size_t left = 0;  // thrown away while leaving
    Clock::time_point until{};
  };
  struct Job {
    int socket = -1;
    int count = 0;
    RequestHead head;
    std::string rest;  // what came behind the head
  };
  void watch();
  void work();
  void admit(Waiting waiting);
  // False: the connection is not waiting any more.
  bool read_some(Waiting& waiting);
  bool go_on(Waiting& waiting);
  bool refuse(Waiting& waiting, const HeadFault& fault);
  void leave(Waiting& waiting);
  bool expire(Waiting& waiting);
  void wake() const;

  Limits limits_;
  Answer answer_;
  Refuse refuse_;
  int wake_ = -1;
  std::atomic<bool> stopping_ = false;
  std::atomic<std::size_t> busy_ = 0;  // with the workers or on their way there
  std::mutex mutex_;                   // of arrived_ and jobs_
  std::condition_variable have_job_;
  std::vector<Waiting> arrived_;
  std::deque<Job> jobs_;
  std::vector<Waiting> waiting_;  // the watching thread's own
  std::vector<std::thread> workers_;
  std::thread watcher_;
};

}  // namespace larderloop
