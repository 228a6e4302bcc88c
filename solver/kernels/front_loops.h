// SPDX-License-Identifier: Apache-2.0
// The dense front loops, templated on the instruction set. Left-looking by blocks of four columns: a tile of
// rows meets all earlier columns in registers, then the four pivots of its block. L D is kept beside L, and
// (D U)^T beside U^T, tile by tile with four numbers a column, so that a tile of the other half reads it in
// one stream.
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
  void eliminate(const FrontSize &size, const FrontHalf &below, const FrontHalf &above,
                 double *pivots) const override
  {
    const bool symmetric = below == above;
    for (int first = 0; first < size.n_pivots; first += block)
    {
      const Tile<1> low = reduced_corner(size, first, below, above);
      const Tile<1> high = symmetric ? low : reduced_corner(size, first, above, below);
      const Corner  corner = factorise(low, high, pivots + first);
      eliminate_columns(size, first, below, above, corner.below, corner.above, corner.inverse);
      if (!symmetric)
        eliminate_columns(size, first, above, below, corner.above, corner.below, corner.inverse);
    }
    subtract_product(size, below, above);
    if (!symmetric)
      subtract_product(size, above, below);
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
  using Square = double[block][block];

  /// Factors of a block of four pivots, L and U^T.
  struct Corner
  {
    Square below = {}, above = {};
    double inverse[block] = {};
  };

  /// Where L D (or its like of the other half) of a row starts: for every four rows a run of n_pivots x 4
  /// numbers.
  static double *scaled(const FrontSize &size, const FrontHalf &half, int row)
  {
    return half.work + static_cast<std::size_t>(row) * size.n_pivots;
  }

  static Tile<1> reduced_corner(const FrontSize &size, int first, const FrontHalf &own,
                                const FrontHalf &other)
  {
    const std::size_t height = size.height();
    Tile<1>           corner = load<1>(own.panel + first * height + first, height);
    subtract<1>(own.panel + first, height, scaled(size, other, first), first, corner);
    return corner;
  }

  /// Four columns of one half, below the corner.
  static void eliminate_columns(const FrontSize &size, int first, const FrontHalf &own,
                                const FrontHalf &other, const Square &own_corner, const Square &other_corner,
                                const double *inverse)
  {
    const int height = size.height();
    double   *columns = own.panel + static_cast<std::size_t>(first) * height;
    for (int c = 0; c < block; ++c)
      for (int r = c + 1; r < block; ++r)
        columns[first + r + static_cast<std::size_t>(c) * height] = own_corner[r][c];
    int row = first + block;
    for (; row + 2 * block <= height; row += 2 * block)
      eliminate_rows<2>(size, first, row, own, other, other_corner, inverse);
    if (row < height)
      eliminate_rows<1>(size, first, row, own, other, other_corner, inverse);
  }

  static void subtract_product(const FrontSize &size, const FrontHalf &own, const FrontHalf &other)
  {
    for (int column = 0; column < size.n_rows; column += block)
    {
      double       *columns = own.update + static_cast<std::size_t>(column) * size.n_rows;
      const double *right = scaled(size, other, size.n_pivots + column);
      const double *left = own.panel + size.n_pivots;
      int           row = column;
      for (; row + 2 * block <= size.n_rows; row += 2 * block)
        update_rows<2>(left + row, size.height(), right, size.n_pivots, columns + row, size.n_rows);
      if (row < size.n_rows)
        update_rows<1>(left + row, size.height(), right, size.n_pivots, columns + row, size.n_rows);
    }
  }

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

  static Corner factorise(const Tile<1> &below, const Tile<1> &above, double *pivots)
  {
    Square low, high; // [column][row]
    for (int c = 0; c < block; ++c)
      below[0][c].store(low[c]), above[0][c].store(high[c]);
    Corner corner;
    for (int c = 0; c < block; ++c)
    {
      pivots[c] = low[c][c];
      corner.inverse[c] = 1 / low[c][c];
      for (int r = c + 1; r < block; ++r)
      {
        corner.below[r][c] = low[c][r] * corner.inverse[c];
        corner.above[r][c] = high[c][r] * corner.inverse[c];
        for (int q = c + 1; q <= r; ++q)
        {
          low[q][r] -= corner.below[r][c] * high[c][q];
          high[q][r] -= corner.above[r][c] * low[c][q];
        }
      }
    }
    return corner;
  }

  template <int n>
  static void eliminate_rows(const FrontSize &size, int first, int row, const FrontHalf &own,
                             const FrontHalf &other, const Square &corner, const double *inverse)
  {
    const std::size_t height = size.height();
    double           *columns = own.panel + first * height + row;
    Tile<n>           tile = load<n>(columns, height);
    subtract<n>(own.panel + row, height, scaled(size, other, first), first, tile);
    for (int c = 0; c < block; ++c)
      for (int r = 0; r < n; ++r)
      {
        for (int p = 0; p < c; ++p)
          tile[r][c] -= tile[r][p] * corner[c][p];
        tile[r][c].store(scaled(size, own, row + r * block) + static_cast<std::size_t>(first + c) * block);
        (tile[r][c] * inverse[c]).store(columns + r * block + c * height);
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
