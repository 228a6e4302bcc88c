// SPDX-License-Identifier: Apache-2.0
// The dense front loops, templated on the instruction set. Left-looking by blocks of four columns: a tile of
// rows meets all earlier columns in registers, then the four pivots of its block. L D is kept beside L, tile
// by tile with four numbers a column, so that a tile reads it in one stream.
#pragma once

#include "solver/kernels/front_kernel.h"
#include "solver/kernels/pack.h"

#include <array>
#include <cstddef>

namespace solemech::solver
{
template <typename Isa>
class FrontLoops : public FrontKernel
{
  using Number = Pack<Isa>;
  static constexpr int block = n_lanes;
  /// n packs of rows of a block's four columns.
  template <int n>
  using Tile = std::array<std::array<Number, block>, n>;

public:
  void eliminate(const FrontSize &size, double *panel, double *update, double *pivots,
                 double *work) const override
  {
    const int height = size.height(), n_pivots = size.n_pivots;
    // Work holds L D: for every four rows a run of n_pivots x 4 numbers.
    const auto scaled = [&](int row) { return work + static_cast<std::size_t>(row) * n_pivots; };
    for (int first = 0; first < n_pivots; first += block)
    {
      double *columns = panel + static_cast<std::size_t>(first) * height;
      Tile<1> corner = load<1>(columns + first, height);
      subtract<1>(panel + first, height, scaled(first), first, corner);
      const Corner below = factorise(corner, pivots + first);
      for (int c = 0; c < block; ++c)
        for (int r = c + 1; r < block; ++r)
          columns[first + r + static_cast<std::size_t>(c) * height] = below.lower[r][c];
      int row = first + block;
      for (; row + 2 * block <= height; row += 2 * block)
        eliminate_rows<2>(panel, columns, height, row, first, below, scaled);
      if (row < height)
        eliminate_rows<1>(panel, columns, height, row, first, below, scaled);
    }
    for (int column = 0; column < size.n_rows; column += block)
    {
      double       *columns = update + static_cast<std::size_t>(column) * size.n_rows;
      const double *right = scaled(n_pivots + column);
      int           row = column;
      for (; row + 2 * block <= size.n_rows; row += 2 * block)
        update_rows<2>(panel + n_pivots + row, height, right, n_pivots, columns + row, size.n_rows);
      if (row < size.n_rows)
        update_rows<1>(panel + n_pivots + row, height, right, n_pivots, columns + row, size.n_rows);
    }
  }

  void forward(const FrontSize &size, const double *panel, double *y) const override
  {
    const int height = size.height();
    for (int first = 0; first < size.n_pivots; first += block)
    {
      const double             *columns = panel + static_cast<std::size_t>(first) * height;
      std::array<Number, block> known;
      for (int c = 0; c < block; ++c)
      {
        known[c] = Number(y[first + c]);
        for (int r = c + 1; r < block; ++r)
          y[first + r] -= columns[first + r + static_cast<std::size_t>(c) * height] * y[first + c];
      }
      for (int row = first + block; row < height; row += block)
      {
        Number rest = Number::load(y + row);
        for (int c = 0; c < block; ++c)
          rest -= Number::load(columns + row + static_cast<std::size_t>(c) * height) * known[c];
        rest.store(y + row);
      }
    }
  }

  void backward(const FrontSize &size, const double *panel, double *y) const override
  {
    const int height = size.height();
    for (int first = size.n_pivots - block; first >= 0; first -= block)
    {
      const double             *columns = panel + static_cast<std::size_t>(first) * height;
      std::array<Number, block> sums{};
      for (int row = first + block; row < height; row += block)
      {
        const Number known = Number::load(y + row);
        for (int c = 0; c < block; ++c)
          sums[c] += Number::load(columns + row + static_cast<std::size_t>(c) * height) * known;
      }
      for (int c = block - 1; c >= 0; --c)
      {
        double value = y[first + c] - (sums[c][0] + sums[c][1] + sums[c][2] + sums[c][3]);
        for (int r = c + 1; r < block; ++r)
          value -= columns[first + r + static_cast<std::size_t>(c) * height] * y[first + r];
        y[first + c] = value;
      }
    }
  }

private:
  /// Factors of a block of four pivots.
  struct Corner
  {
    double lower[block][block] = {}, inverse[block] = {};
  };

  template <int n>
  static Tile<n> load(const double *from, std::size_t height)
  {
    Tile<n> tile;
    for (int r = 0; r < n; ++r)
      for (int c = 0; c < block; ++c)
        tile[r][c] = Number::load(from + c * height + r * block);
    return tile;
  }

  /// tile -= left right^T over `n_columns` columns.
  template <int n>
  static void subtract(const double *left, std::size_t height, const double *right, int n_columns,
                       Tile<n> &tile)
  {
    for (int k = 0; k < n_columns; ++k, left += height, right += block)
    {
      std::array<Number, n> rows;
      for (int r = 0; r < n; ++r)
        rows[r] = Number::load(left + r * block);
      for (int c = 0; c < block; ++c)
      {
        const Number factor(right[c]);
        for (int r = 0; r < n; ++r)
          tile[r][c] -= rows[r] * factor;
      }
    }
  }

  static Corner factorise(const Tile<1> &tile, double *pivots)
  {
    double a[block][block]; // [column][row]
    for (int c = 0; c < block; ++c)
      tile[0][c].store(a[c]);
    Corner corner;
    for (int c = 0; c < block; ++c)
    {
      pivots[c] = a[c][c];
      corner.inverse[c] = 1 / a[c][c];
      for (int r = c + 1; r < block; ++r)
      {
        corner.lower[r][c] = a[c][r] * corner.inverse[c];
        for (int q = c + 1; q <= r; ++q)
          a[q][r] -= corner.lower[r][c] * a[c][q];
      }
    }
    return corner;
  }

  template <int n, typename Scaled>
  static void eliminate_rows(const double *panel, double *columns, std::size_t height, int row, int first,
                             const Corner &corner, const Scaled &scaled)
  {
    Tile<n> tile = load<n>(columns + row, height);
    subtract<n>(panel + row, height, scaled(first), first, tile);
    for (int c = 0; c < block; ++c)
      for (int r = 0; r < n; ++r)
      {
        for (int p = 0; p < c; ++p)
          tile[r][c] -= tile[r][p] * corner.lower[c][p];
        tile[r][c].store(scaled(row + r * block) + static_cast<std::size_t>(first + c) * block);
        (tile[r][c] * corner.inverse[c]).store(columns + row + r * block + c * height);
      }
  }

  template <int n>
  static void update_rows(const double *left, std::size_t height, const double *right, int n_columns,
                          double *to, std::size_t to_height)
  {
    Tile<n> tile = load<n>(to, to_height);
    subtract<n>(left, height, right, n_columns, tile);
    for (int c = 0; c < block; ++c)
      for (int r = 0; r < n; ++r)
        tile[r][c].store(to + c * to_height + r * block);
  }
};
} // namespace solemech::solver
